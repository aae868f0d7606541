import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Outcome } from '../../../care/results/facts.ts';
import { outcomes } from '../../../care/results/facts.ts';
import type { Day } from '../../../care/time.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import { DateField } from '../../pieces/form/date-field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { At, Entry } from './entry.ts';
import { StepHead } from './step-head.tsx';

/** What the result says, and the day on it. Nothing is picked beforehand. */
export function EnterOutcome({
  at,
  onEntry,
}: {
  readonly at: At<'outcome'>;
  readonly onEntry: (entry: Entry) => void;
}): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { entry: say, picks, means } = words.results;
  const today = todayOf(desk);
  const [outcome, setOutcome] = useState<Outcome | ''>('');
  const [reported, setReported] = useState<string>(today);
  const [tried, setTried] = useState(false);
  const future = reported > today;

  const submit = (): void => {
    setTried(true);
    if (outcome === '' || reported === '' || future) return;
    const { coded, second, corrects } = at;
    onEntry({ step: 'read-back', coded, second, corrects, outcome, reported: reported as Day });
  };

  return (
    <>
      <StepHead title={say.outcome} />
      <form
        class="form-grid"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          submit();
        }}
      >
        <Choice
          id="outcome"
          label={<span class="unseen">{say.outcome}</span>}
          value={outcome}
          onValue={setOutcome}
          options={outcomes.map((each) => ({ value: each, label: picks[each], hint: means[each] }))}
          problem={tried && outcome === '' ? say.pickOutcome : undefined}
        />
        <DateField
          id="reported"
          label={say.reported}
          value={reported}
          onValue={setReported}
          max={today}
          problem={
            future ? words.refusals.inTheFuture : tried && reported === '' ? say.fillDay : undefined
          }
        />
        <div class="button-row">
          <Button kind="main" submit>
            {say.next}
          </Button>
          <Button icon="back" onPress={() => onEntry({ step: 'code' })}>
            {say.scanAgain}
          </Button>
        </div>
      </form>
    </>
  );
}
