import type { JSX } from 'preact';
import type { StaffId } from '../../../../care/ids.ts';
import { outbreakOn } from '../../../../care/outbreaks/outbreak.ts';
import { unitsApart } from '../../../../care/policy/policy.ts';
import { namesIn } from '../../../desk/names.ts';
import { Checks, Choice } from '../../../pieces/form/choice.tsx';
import { Disclosure } from '../../../pieces/page/disclosure.tsx';
import type { AllWords } from '../../../words/en-all.ts';
import { useAllWords } from '../../../words/use-all-words.ts';
import type { Prepare } from '../use-prepare.ts';
import type { Told } from './planning-draft.ts';
import type { HardWish } from './question.ts';
import { hardWishes, unitsOf } from './question.ts';

export interface DayFieldsProps {
  readonly prepare: Prepare;
  readonly on: readonly StaffId[];
  readonly told: Told;
}

/** Which wishes hold on this one day, and how units are kept apart on it. */
export function WishFields({ prepare, on, told }: DayFieldsProps): JSX.Element {
  const words = useAllWords();
  const say = words.helpers.day;
  const { draft, desk } = prepare;
  const wishes = hardWishes(prepare, on);
  const waived = draft.planning.waived ?? [];
  const names = namesIn(desk.home, words.refusals.somebody);
  return (
    <>
      <Disclosure title={say.title}>
        {wishes.length === 0 ? (
          <p>{say.none}</p>
        ) : (
          <Checks
            id="plan-wishes"
            label={say.hold}
            hint={say.hint}
            value={wishes.map(({ key }) => key).filter((key) => !waived.includes(key))}
            onValue={(held) =>
              told.set({
                waived: wishes.map(({ key }) => key).filter((key) => !held.includes(key)),
              })
            }
            options={wishes.map((wish) => ({
              value: wish.key,
              label: sayHard(wish, words, names),
            }))}
          />
        )}
      </Disclosure>
      <Disclosure title={say.units}>
        <Choice
          id="plan-units"
          label={say.units}
          hint={outbreakOn(desk.home, draft.day) ? say.unitsOutbreak : say.unitsNone}
          value={unitsOf(prepare)}
          onValue={(how) => how !== '' && told.set({ unitsApart: how })}
          options={unitsApart.map((value) => ({ value, label: say.apart[value] }))}
        />
      </Disclosure>
    </>
  );
}

function sayHard(
  wish: HardWish,
  { helpers: { day }, wishes: { swabbers } }: AllWords,
  names: ReturnType<typeof namesIn>,
): string {
  const who = names.person(wish.person);
  return 'swabber' in wish
    ? day.swabber(who, swabbers[wish.swabber])
    : day.unwanted(who, names.staff(wish.unwanted));
}
