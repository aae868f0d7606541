import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { TestId } from '../../../care/ids.ts';
import type { Meaning } from '../../../care/results/meaning.ts';
import { meaningOf } from '../../../care/results/meaning.ts';
import { swabsOf } from '../../../care/rounds/history.ts';
import { storyOf } from '../../../care/rounds/story.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { IconArray } from './icon-array.tsx';
import './meaning.css';

/**
 * What one result means: one sentence, a picture of 100 people, and what the figure rests on. Nothing
 * where the test has no yes or no, or policy gives no figures. For the page of a test or of its actions.
 */
export function ResultMeaning({ test }: { readonly test: TestId }): JSX.Element | null {
  const { home } = useDesk();
  const [moved, setMoved] = useState<number | undefined>(undefined);
  const person = storyOf(home, test)?.turn.person;
  const swab =
    person === undefined ? undefined : swabsOf(home, person).find((each) => each.test.id === test);
  const meaning = swab && meaningOf(home, swab, moved);
  return meaning === undefined ? null : <Shown meaning={meaning} onMove={setMoved} />;
}

interface ShownProps {
  readonly meaning: Meaning;
  readonly onMove: (before: number | undefined) => void;
}

function Shown({ meaning, onMove }: ShownProps): JSX.Element {
  const { meaning: say } = useAllWords();
  const { after, lower, upper, result, strength } = meaning;
  return (
    <Part title={say.title}>
      <div class="meaning">
        <IconArray share={after} label={say.picture(after)} />
        <div class="meaning-words">
          <p class="meaning-says" role="status">
            {say.sentence(after, result)}
          </p>
          <p>{say.range(lower, upper)}</p>
          <Before meaning={meaning} onMove={onMove} />
        </div>
      </div>
      <Notice kind="look" title={say.cautions}>
        {result === 'negative' ? say.cautionNegative : say.cautionPositive} {say.cautionAlways}
      </Notice>
      {(strength.because.length > 0 || meaning.counted > 1) && (
        <>
          <h3>{say.less}</h3>
          <ul>
            {strength.because.map(({ why }) => (
              <li key={why}>{say.strength[why]}</li>
            ))}
            {strength.day === undefined && <li>{say.noDay}</li>}
            {meaning.counted > 1 && <li>{say.counted(meaning.counted)}</li>}
          </ul>
        </>
      )}
      <p class="field-hint">{say.source}</p>
    </Part>
  );
}

function Before({ meaning, onMove }: ShownProps): JSX.Element {
  const { meaning: say } = useAllWords();
  const { before, usualBefore, known, cases } = meaning;
  const percent = Math.max(1, Math.round(before * 100));
  return (
    <div class="meaning-before">
      <label for="before">
        <b>{say.before}</b>
      </label>
      <p>
        {say.known[known]} {cases && say.cases}
      </p>
      <input
        id="before"
        type="range"
        min={1}
        max={95}
        step={1}
        value={percent}
        aria-valuetext={say.of100(before)}
        aria-describedby="before-hint"
        onInput={(event) => onMove(Number(event.currentTarget.value) / 100)}
      />
      <output for="before">{say.of100(before)}</output>
      <p class="field-hint" id="before-hint">
        {say.beforeHint}
      </p>
      {before !== usualBefore && (
        <div>
          <Button kind="quiet" onPress={() => onMove(undefined)}>
            {say.usual}
          </Button>
        </div>
      )}
    </div>
  );
}
