import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { TestId } from '../../../care/ids.ts';
import { resultsBoard } from '../../../care/results/board.ts';
import type { Outcome } from '../../../care/results/facts.ts';
import { outcomes } from '../../../care/results/facts.ts';
import type { InTray } from '../../../care/results/tray.ts';
import type { Day } from '../../../care/time.ts';
import { settleReport } from '../../../procedures/take-in-results.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { KeepForm } from '../../keeping/keep-form.tsx';
import { useGoOn } from '../../keeping/use-go-on.ts';
import { useKeep } from '../../keeping/use-keep.ts';
import { Choice } from '../../pieces/form/choice.tsx';
import { DateField } from '../../pieces/form/date-field.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';

type Decision = 'this' | 'other' | 'set-aside';

/** What a senior decides about a report, with a reason. Nothing is picked beforehand. */
export function SettleForm({ found }: { readonly found: InTray }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { takingIn: say } = words;
  const keep = useKeep();
  const go = useGoOn();
  const { received, match } = found;
  const { data } = received;
  const [decision, setDecision] = useState<Decision | ''>('');
  const [other, setOther] = useState<TestId | ''>('');
  const [outcome, setOutcome] = useState<Outcome | ''>('');
  const [reported, setReported] = useState('');
  const [reason, setReason] = useState('');
  const names = namesIn(desk.home, words.refusals.somebody);
  const board = resultsBoard(desk.home, desk.now());
  const waiting = [...board.late, ...board.waiting];
  const belongs = decision === 'this' || decision === 'other';
  return (
    <Part title={say.decide}>
      <KeepForm keep={keep} onKeep={submit} label={say.keepDecision}>
        <Choice<Decision>
          id="decision"
          label={say.decide}
          value={decision}
          onValue={setDecision}
          problem={keep.problemOf('decision')}
          options={[
            ...(match.person === undefined
              ? []
              : [{ value: 'this' as const, label: say.belongs(names.person(match.person)) }]),
            ...(waiting.length > 0 ? [{ value: 'other' as const, label: say.otherTest }] : []),
            { value: 'set-aside', label: say.setAside },
          ]}
        />
        {decision === 'other' && (
          <Select
            id="test"
            label={say.pickTest}
            hint={say.pickTestHint}
            none={say.pick}
            value={other}
            onValue={(picked) => setOther(picked as TestId | '')}
            problem={keep.problemOf('test')}
            options={waiting.map(({ swab }) => ({
              value: swab.test.id,
              label: say.testOption(names.person(swab.turn.person), swab.test.code ?? '', swab.on),
            }))}
          />
        )}
        {belongs && data.outcome === undefined && (
          <Choice<Outcome>
            id="outcome"
            label={say.outcomeIs}
            value={outcome}
            onValue={setOutcome}
            problem={keep.problemOf('outcome')}
            options={outcomes.map((value) => ({ value, label: words.results.picks[value] }))}
          />
        )}
        {belongs && data.reported === undefined && (
          <DateField
            id="reported"
            label={say.dayIs}
            value={reported}
            onValue={setReported}
            problem={keep.problemOf('reported')}
          />
        )}
        <Field
          id="reason"
          label={say.reason}
          hint={say.reasonHint}
          lines={3}
          value={reason}
          onValue={setReason}
          problem={keep.problemOf('reason')}
        />
      </KeepForm>
    </Part>
  );

  async function submit(): Promise<void> {
    const wrong = [
      ...(decision === '' ? [{ field: 'decision', text: say.pick }] : []),
      ...(decision === 'other' && other === '' ? [{ field: 'test', text: say.pick }] : []),
      ...(belongs && data.outcome === undefined && outcome === ''
        ? [{ field: 'outcome', text: words.results.entry.pickOutcome }]
        : []),
      ...(belongs && data.reported === undefined && reported === ''
        ? [{ field: 'reported', text: words.results.entry.fillDay }]
        : []),
      ...(reason.trim() === '' ? [{ field: 'reason', text: words.results.chase.fill }] : []),
    ];
    const test = decision === 'this' ? match.test : other === '' ? undefined : other;
    const facts = await keep.keep(wrong, (home, doing) =>
      settleReport(
        home,
        {
          ...{ report: data.report, reason, verdict: belongs ? 'belongs' : 'set-aside' },
          ...(belongs && test !== undefined && { test }),
          ...(outcome !== '' && { outcome }),
          ...(reported !== '' && { reported: reported as Day }),
        },
        doing,
      ),
    );
    if (facts !== undefined) go(belongs && test !== undefined ? paths.act(test) : paths.tray);
  }
}
