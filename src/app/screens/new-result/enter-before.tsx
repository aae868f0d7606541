import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { TestId } from '../../../care/ids.ts';
import { actionsFor } from '../../../care/results/actions.ts';
import { before as standingOn } from '../../../care/results/counting.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { At, Entry } from './entry.ts';
import { StepHead } from './step-head.tsx';

/** There is a result already: it is shown, with who acted on it, before another may take its place. */
export function EnterBefore({
  at,
  onEntry,
}: {
  readonly at: At<'before'>;
  readonly onEntry: (entry: Entry) => void;
}): JSX.Element {
  const { entry: say } = useAllWords().results;
  const [same, setSame] = useState(false);
  const { coded, second } = at;
  return (
    <>
      <StepHead title={say.before} />
      {coded.named !== undefined && <OldResult test={coded.named.test} />}
      <div class="button-row">
        <Button
          kind="main"
          onPress={() => onEntry({ step: 'outcome', coded, second, corrects: true })}
        >
          {say.corrects}
        </Button>
        <Button onPress={() => setSame(true)}>{say.notCorrects}</Button>
      </div>
      <p class="field-hint">{say.correctsWhy}</p>
      <p role="status">{same && say.sameAgain}</p>
      {same && (
        <div>
          <Button icon="scan" onPress={() => onEntry({ step: 'code' })}>
            {say.another}
          </Button>
        </div>
      )}
    </>
  );
}

function OldResult({ test }: { readonly test: TestId }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.results.entry;
  const names = namesIn(home, words.refusals.somebody);
  const acted = actionsFor(home, test).filter(({ done }) => done !== undefined);
  return (
    <div class="entry-old">
      {standingOn(home, test).map((result) => (
        <p key={result.id}>
          <b>
            {say.beforeSays(
              words.results.picks[result.data.outcome],
              result.at,
              names.staff(result.by),
            )}
          </b>
        </p>
      ))}
      {acted.length === 0 ? (
        <p>{say.nobodyActed}</p>
      ) : (
        <ul>
          {acted.map(({ kind, done }) => (
            <li key={kind}>
              {done !== undefined &&
                say.actedOn(words.now.actions[kind], names.staff(done.by), done.at)}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
