import type { PersonId, StaffId } from '../../../../care/ids.ts';
import type { Broken } from '../../../../care/rounds/planning/check-plan.ts';
import type { PlanRule } from '../../../../care/rounds/planning/conflicts.ts';
import type { PlanInstance, PlanPerson } from '../../../../care/rounds/planning/instance.ts';
import { clock } from '../../../../care/rounds/planning/minutes.ts';
import type { Repair, TriedRepair } from '../../../../care/rounds/planning/repairs.ts';
import type { Because } from '../../../../care/rounds/planning/why-here.ts';
import type { Names } from '../../../desk/names.ts';
import type { AllWords } from '../../../words/en-all.ts';

interface Voice {
  readonly words: AllWords;
  readonly names: Names;
}

/** Rules that are about a colleague, though a person is concerned too. */
const ABOUT_STAFF: ReadonlySet<Broken['rule']> = new Set([
  ...(['alone', 'may-not-swab', 'may-not-record', 'kept-apart', 'not-on-shift'] as const),
  ...(['on-break', 'in-two-places', 'pair-changed'] as const),
]);

/** Whom somebody asked for to swab; an instance may name another wish than the app knows. */
const sayWish = (wish: string | undefined, { wishes }: AllWords): string =>
  wish === 'woman' || wish === 'man' ? wishes.swabbers[wish] : (wish ?? '');

/** What a plan breaks, each thing once. */
export function sayBroken(
  broken: readonly Broken[],
  { people }: PlanInstance,
  { words, names }: Voice,
): readonly string[] {
  const said = broken.map(({ rule, person, staff, minutes = 0 }) => {
    const who =
      ABOUT_STAFF.has(rule) && staff !== undefined
        ? names.staff(staff as StaffId)
        : names.person(person as PersonId | undefined);
    const wish = people.find(({ id }) => id === person)?.swabberGender;
    const more =
      rule === 'other-gender' ? sayWish(wish, words) : names.staff(staff as StaffId | undefined);
    return words.planner.broken[rule](who, minutes, more);
  });
  return [...new Set(said)];
}

export function sayRule(rule: PlanRule, instance: PlanInstance, { words, names }: Voice): string {
  const say = words.planner.rules[rule.rule];
  if (rule.rule === 'courier') return say(clock(Math.max(...instance.rules.collections)), '');
  if (rule.rule === 'pairs') return say(String(instance.rules.pairs), '');
  if (rule.rule === 'apart')
    return say(names.staff(rule.staff as StaffId), names.staff(rule.other as StaffId));
  const { people, staff } = instance;
  if ('staff' in rule) {
    const shift = staff.find(({ id }) => id === rule.staff)?.shift;
    const span = shift ? `${clock(shift.from)} to ${clock(shift.until)}` : '';
    return say(names.staff(rule.staff as StaffId), span);
  }
  if ('person' in rule) {
    const person = people.find(({ id }) => id === rule.person);
    return say(names.person(rule.person as PersonId), sayOfPerson(rule, person, { words, names }));
  }
  return say('', '');
}

/** What a rule about one person says besides their name: a time, or whom they asked for or against. */
function sayOfPerson({ rule }: PlanRule, person: PlanPerson | undefined, voice: Voice): string {
  const [window] = person?.windows ?? [];
  if (rule === 'excluded') return sayStaff(person?.excluded ?? [], voice);
  if (rule === 'gender') return sayWish(person?.swabberGender, voice.words);
  return rule === 'windows' && window
    ? `${clock(window.from)} to ${clock(window.until)}`
    : clock(person?.notBefore ?? 0);
}

const sayStaff = (ids: readonly string[], { words, names }: Voice): string =>
  words.planner.list(ids.map((id) => names.staff(id as StaffId)));

export function sayRepair({ repair, finish, chance }: TriedRepair, voice: Voice): string {
  const then = voice.words.planner.repaired(clock(finish), chance);
  return `${sayWhatToDo(repair, voice)} ${then}`;
}

function sayWhatToDo(repair: Repair, { words, names }: Voice): string {
  const { repairs, ask, list } = words.planner;
  switch (repair.repair) {
    case 'ask':
      return repair.wishes
        .map(({ person, may, staff }) =>
          ask[may](names.person(person as PersonId), names.staff(staff as StaffId)),
        )
        .join(' ');
    case 'leave':
      return repairs.leave(list(repair.people.map((id) => names.person(id as PersonId))), 0);
    case 'more-supplies':
      return repairs['more-supplies']('', repair.people);
    default: {
      const who = 'staff' in repair ? names.staff(repair.staff as StaffId) : '';
      return repairs[repair.repair](who, 'minutes' in repair ? repair.minutes : 0);
    }
  }
}

/** Why somebody stands where they do; `who` is their name. */
export function sayBecause(because: Because, who: string, voice: Voice): string {
  const { words, names } = voice;
  const say = words.planner.because[because.because];
  if ('person' in because) return say(names.person(because.person as PersonId), who);
  if ('staff' in because) return say(names.staff(because.staff as StaffId), who);
  if ('wanted' in because) return say(sayStaff(because.wanted, voice), who);
  if ('unwanted' in because) return say(sayStaff(because.unwanted, voice), who);
  if ('wish' in because) return say(sayWish(because.wish, words), who);
  if ('from' in because) return say(clock(because.from), who);
  return say('until' in because ? clock(because.until) : '', who);
}
