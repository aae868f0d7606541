import type { JSX } from 'preact';
import { personOf } from '../../../../care/people/person.ts';
import { kitKindOf, policyOn } from '../../../../care/policy/in-force.ts';
import { namesIn } from '../../../desk/names.ts';
import { sayTimes } from '../../../desk/say-usual-times.ts';
import { Button } from '../../../pieces/form/button.tsx';
import { Checks } from '../../../pieces/form/choice.tsx';
import { TimeField } from '../../../pieces/form/date-field.tsx';
import { SpanRows } from '../../../pieces/form/span-rows.tsx';
import { Disclosure } from '../../../pieces/page/disclosure.tsx';
import { useAllWords } from '../../../words/use-all-words.ts';
import { apartAmong, mealsOf, shiftOf } from './question.ts';
import type { DayFieldsProps } from './wish-fields.tsx';
import { WishFields } from './wish-fields.tsx';

const MOST_COURIERS = 4;

/** What holds on this one day, each begun from what is usual: breaks, meals, couriers, pairs, times. */
export function DayFields({ prepare, on, told }: DayFieldsProps): JSX.Element {
  const words = useAllWords();
  const say = words.planner;
  const { draft, desk } = prepare;
  const { home } = desk;
  const names = namesIn(home, words.refusals.somebody);
  const { planning } = draft;
  const { policy } = policyOn(home, draft.day);
  const gap = kitKindOf(policy, draft.kitKind)?.nothingByMouthMinutes.value;
  const apart = apartAmong(prepare, on);
  return (
    <>
      <Disclosure title={say.duties}>
        {on.map((staff) => (
          <SpanRows
            key={staff}
            id={`plan-${staff}-away`}
            label={say.dutiesOf(names.staff(staff))}
            what={words.usual.staff.break}
            value={shiftOf(prepare, staff).away}
            onValue={(away) => told.setShift(staff, { away })}
            most={6}
          />
        ))}
      </Disclosure>
      <Disclosure title={say.meals}>
        <SpanRows
          id="plan-meals"
          label={say.mealsToday}
          {...(gap !== undefined && { hint: say.mealGap(gap) })}
          what={say.meal}
          value={mealsOf(prepare)}
          onValue={(meals) => told.set({ meals })}
          most={6}
        />
      </Disclosure>
      <Disclosure title={say.couriers}>
        {planning.couriers.map((at, i) => (
          <TimeField
            // biome-ignore lint/suspicious/noArrayIndexKey: a time that is being typed has no other name
            key={i}
            id={`plan-courier-${i + 2}`}
            label={say.courierToo(i + 2)}
            optional
            value={at}
            onValue={(value) =>
              told.set({ couriers: planning.couriers.map((was, j) => (j === i ? value : was)) })
            }
          />
        ))}
        {planning.couriers.length < MOST_COURIERS - 1 && (
          <div class="button-row">
            <Button kind="quiet" onPress={() => told.set({ couriers: [...planning.couriers, ''] })}>
              {say.addCourier}
            </Button>
          </div>
        )}
      </Disclosure>
      <Disclosure title={say.apart}>
        {apart.length === 0 ? (
          <p>{say.nobodyApart}</p>
        ) : (
          <Checks
            id="plan-apart"
            label={say.apartToday}
            value={apart.map(({ key }) => key).filter((key) => !planning.together.includes(key))}
            onValue={(kept) =>
              told.set({
                together: apart.map(({ key }) => key).filter((key) => !kept.includes(key)),
              })
            }
            options={apart.map(({ key, two: [a, b] }) => ({
              value: key,
              label: say.pairOf(names.staff(a), names.staff(b)),
            }))}
          />
        )}
      </Disclosure>
      <WishFields {...{ prepare, on, told }} />
      <PeopleTimes prepare={prepare} told={told} />
    </>
  );
}

function PeopleTimes({ prepare, told }: Omit<DayFieldsProps, 'on'>): JSX.Element {
  const words = useAllWords();
  const say = words.planner;
  const { draft, desk, places } = prepare;
  const names = namesIn(desk.home, words.refusals.somebody);
  const { times } = draft.planning;
  return (
    <Disclosure title={say.times}>
      <p>{say.timesLead}</p>
      {places.map(({ person }) => {
        const span = times[person] ?? { from: '', until: '' };
        const usual = personOf(desk.home, person).times;
        const isUsual = usual.windows.length > 0 || usual.out.length > 0;
        const setSpan = (change: object): void =>
          told.set({ times: { ...times, [person]: { ...span, ...change } } });
        return (
          <div key={person} class="field-row">
            <TimeField
              id={`plan-${person}-from`}
              label={say.personFrom(names.person(person))}
              {...(isUsual && { hint: sayTimes(usual, words) })}
              optional
              value={span.from}
              onValue={(from) => setSpan({ from })}
            />
            <TimeField
              id={`plan-${person}-until`}
              label={say.personUntil(names.person(person))}
              optional
              value={span.until}
              onValue={(until) => setSpan({ until })}
            />
          </div>
        );
      })}
    </Disclosure>
  );
}
