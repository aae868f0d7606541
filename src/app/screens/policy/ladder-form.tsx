import type { JSX } from 'preact';
import { policyOn } from '../../../care/policy/in-force.ts';
import type { Day } from '../../../care/time.ts';
import { pureHash } from '../../../ledger/hash.ts';
import { amendPolicy } from '../../../procedures/amend-policy.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { OnlyFor } from '../../keeping/only-for.tsx';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import type { FormProblem } from '../../pieces/form/error-summary.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';
import type { AmendFields } from './amend-parts.tsx';
import { firstDay, SourceAndDay } from './amend-parts.tsx';
import type { RungDraft } from './rungs.tsx';
import { Rungs } from './rungs.tsx';

interface LadderFields extends AmendFields {
  readonly rungs: readonly RungDraft[];
  readonly everyDays: string;
}

/** The manager adds, rewords, orders and takes out the steps of practice. Every change is a version. */
export function LadderForm(): JSX.Element {
  const { policy: say } = useAllWords();
  return (
    <OnlyFor role="manager" title={say.amend.ladder} back={paths.policy}>
      <OpenForm />
    </OnlyFor>
  );
}

function OpenForm(): JSX.Element {
  const desk = useDesk();
  const { policy, practising, keeping, refusals } = useAllWords();
  const say = policy.amend;
  const first = firstDay(desk.home, todayOf(desk));
  const { practice } = policyOn(desk.home, first).policy;
  const form = useForm<LadderFields>(
    {
      rungs: (practice?.steps ?? []).map(({ step, title, minutes }) => ({
        ...{ key: step, step, title, minutes: String(minutes) },
      })),
      everyDays: String(practice?.everyDays.value ?? 1),
      ...{ source: '', from: first },
    },
    { title: say.ladder, back: paths.policy },
  );
  if (practice === undefined) return <Notice kind="look" title={refusals.noLadder} />;
  const { rungs, everyDays, source, from } = form.value;
  return (
    <RecordForm
      title={say.ladder}
      lead={
        <>
          <p>{say.ladderLead}</p>
          <p>{say.lead}</p>
          <Notice kind="note" title={practising.never}>
            {practising.endWell}
          </Notice>
        </>
      }
      back={paths.policy}
      keep={form.keep}
      onKeep={() => void keep()}
      label={say.press}
    >
      <Rungs
        rungs={rungs}
        problemOf={form.keep.problemOf}
        onRungs={(next) => form.set({ rungs: next })}
      />
      <Field {...form.bind('everyDays')} label={say.every} inputMode="numeric" wide={3} />
      <SourceAndDay form={form} first={first} />
    </RecordForm>
  );

  async function keep(): Promise<void> {
    await form.submit(wrong(), (home, doing) =>
      amendPolicy(
        home,
        {
          change: {
            change: 'practice',
            steps: rungs.map(({ step, title, minutes }) => ({
              ...(step !== undefined && { step }),
              ...{ title, minutes: Number(minutes) },
            })),
            everyDays: Number(everyDays),
          },
          ...{ source, from: from as Day, hash: pureHash },
        },
        doing,
      ),
    );
  }

  function wrong(): FormProblem[] {
    const whole = (field: string, text: string): FormProblem[] =>
      /^[0-9]{1,2}$/.test(text.trim()) && Number(text) > 0 ? [] : [{ field, text: say.whole }];
    return [
      ...(rungs.length < 2 || rungs.length > 15 ? [{ field: 'steps', text: say.fewest }] : []),
      ...rungs.flatMap(({ title, minutes }, i) => [
        ...missing({ [`title-${i}`]: title }, keeping.fillIn),
        ...whole(`minutes-${i}`, minutes),
      ]),
      ...whole('everyDays', everyDays),
      ...missing({ source, from }, keeping.fillIn),
    ];
  }
}
