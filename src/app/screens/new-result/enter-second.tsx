import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { testOf } from '../../../care/custody/test.ts';
import { before as standingOn } from '../../../care/results/counting.ts';
import { agrees } from '../../../procedures/record-result.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import { DateField } from '../../pieces/form/date-field.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { At, Entry, SecondWay } from './entry.ts';
import { StepHead } from './step-head.tsx';

const WAYS: readonly (SecondWay | 'none')[] = ['born', 'name', 'reference', 'none'];

/** A second detail as it is printed, checked before any name is shown: it must not be nodded through. */
export function EnterSecond({
  at,
  onEntry,
}: {
  readonly at: At<'second'>;
  readonly onEntry: (entry: Entry) => void;
}): JSX.Element {
  const { home } = useDesk();
  const { entry: say } = useAllWords().results;
  const [way, setWay] = useState<SecondWay | 'none' | ''>('');
  const [value, setValue] = useState('');
  const [tried, setTried] = useState(false);
  const { coded } = at;
  const spoiled = coded.named && testOf(home, coded.named.test).spoiled;

  const check = (): void => {
    setTried(true);
    if (way === '' || coded.named === undefined) return;
    if (way === 'none') {
      onEntry({ step: 'stop', coded, printed: false });
      return;
    }
    if (value.trim() === '') return;
    const second = { is: way, value };
    if (!agrees(home, coded.named, second)) {
      onEntry({ step: 'stop', coded, printed: true });
      return;
    }
    const before = standingOn(home, coded.named.test).length > 0;
    onEntry(
      before
        ? { step: 'before', coded, second }
        : { step: 'outcome', coded, second, corrects: false },
    );
  };

  const problem = tried && value.trim() === '' ? say.fillSecond : undefined;
  return (
    <>
      <StepHead title={say.second} />
      <p>{say.secondWhy}</p>
      {spoiled !== undefined && (
        <Notice kind="look" title={say.closed(spoiled.at)}>
          {say.closedHow}
        </Notice>
      )}
      <form
        class="form-grid"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          check();
        }}
      >
        <Choice
          id="way"
          label={<span class="unseen">{say.second}</span>}
          value={way}
          onValue={(next) => {
            setWay(next);
            setValue('');
            setTried(false);
          }}
          options={WAYS.map((each) => ({ value: each, label: say.ways[each] }))}
          problem={tried && way === '' ? say.pickSecond : undefined}
        />
        {way === 'born' && (
          <DateField
            id="second"
            label={say.fields.born}
            value={value}
            onValue={setValue}
            problem={problem}
          />
        )}
        {(way === 'name' || way === 'reference') && (
          <Field
            id="second"
            label={say.fields[way]}
            value={value}
            onValue={setValue}
            problem={problem}
          />
        )}
        <div class="button-row">
          <Button kind="main" submit>
            {say.check}
          </Button>
          <Button icon="back" onPress={() => onEntry({ step: 'code' })}>
            {say.scanAgain}
          </Button>
        </div>
      </form>
    </>
  );
}
