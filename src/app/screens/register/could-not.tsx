import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { FactOf, NewFact } from '../../../care/catalogue.ts';
import type { StaffId, TestId } from '../../../care/ids.ts';
import { allow } from '../../../care/refusal.ts';
import type { ToRegister } from '../../../care/results/registering.ts';
import { registrationFailed } from '../../../procedures/register.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { KeepForm } from '../../keeping/keep-form.tsx';
import { useKeep } from '../../keeping/use-keep.ts';
import { Choice } from '../../pieces/form/choice.tsx';
import { Disclosure } from '../../pieces/page/disclosure.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { Moment } from '../parts/moment-field.tsx';
import { instantIn, MomentField } from '../parts/moment-field.tsx';
import { StaffField } from '../parts/staff-field.tsx';
import type { RegisterData } from './register-data.ts';
import { isOpen } from './register-data.ts';

type Why = FactOf<'registration.failed'>['data']['why'];
const REASONS: readonly Why[] = [
  'site-down',
  'no-connection',
  'refused',
  'missing-details',
  'other',
];

interface CouldNotProps {
  readonly data: RegisterData;
  readonly current: ToRegister;
  readonly onDone: () => void;
}

/** It could not be done now: why, when it is tried again, and by whom. Stays at the top until it is done. */
export function CouldNot({ data, current, onDone }: CouldNotProps): JSX.Element {
  const desk = useDesk();
  const { registering: say } = useAllWords();
  const keep = useKeep();
  const [why, setWhy] = useState<Why | ''>('');
  const [who, setWho] = useState<StaffId | ''>(desk.me);
  const [moment, setMoment] = useState<Moment>({ day: todayOf(desk), time: '' });
  const [many, setMany] = useState<'all' | 'this' | ''>('this');
  const left = data.list.filter(isOpen).map(({ test }) => test.id);
  const nextTry = instantIn(moment, desk.home.service.zone);

  const submit = async (): Promise<void> => {
    const wrong = [
      ...(why === '' ? [{ field: 'why', text: say.fillWhy }] : []),
      ...(nextTry === undefined ? [{ field: 'nextTry', text: say.fillWhen }] : []),
      ...(who === '' ? [{ field: 'who', text: say.fillWho }] : []),
    ];
    const tests = many === 'all' ? left : [current.test.id];
    const kept = await keep.keep(wrong, (home, doing) =>
      why === '' || who === '' || nextTry === undefined
        ? allow([])
        : failAll(tests, (test) => registrationFailed(home, { test, why, nextTry, who }, doing)),
    );
    if (kept !== undefined && many !== 'all') onDone();
  };

  return (
    <Disclosure title={say.couldNot}>
      <KeepForm keep={keep} onKeep={submit} label={say.keepFailed} lesser>
        <Choice
          id="why"
          label={say.couldNotWhy}
          inline
          value={why}
          onValue={setWhy}
          options={REASONS.map((value) => ({ value, label: say.why[value] }))}
          problem={keep.problemOf('why')}
        />
        <MomentField
          id="nextTry"
          label={say.nextTry}
          value={moment}
          onValue={setMoment}
          problem={keep.problemOf('nextTry')}
        />
        <StaffField
          id="who"
          label={say.who}
          value={who}
          onValue={setWho}
          problem={keep.problemOf('who')}
        />
        {left.length > 1 && (
          <Choice
            id="many"
            label={<span class="unseen">{say.couldNot}</span>}
            inline
            value={many}
            onValue={setMany}
            options={[
              { value: 'this', label: say.onlyThis },
              { value: 'all', label: say.all(left.length) },
            ]}
          />
        )}
      </KeepForm>
    </Disclosure>
  );
}

/** The same for each; the first that is turned away turns all away, so that nothing is half kept. */
function failAll(
  tests: readonly TestId[],
  fail: (test: TestId) => ReturnType<typeof registrationFailed>,
): ReturnType<typeof registrationFailed> {
  const facts: NewFact[] = [];
  for (const test of tests) {
    const outcome = fail(test);
    if (!outcome.ok) return outcome;
    facts.push(...outcome.value);
  }
  return allow(facts);
}
