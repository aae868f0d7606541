import type { PersonId, StaffId } from '../../../../care/ids.ts';
import type { Broken } from '../../../../care/rounds/planning/check-plan.ts';
import type { PlanRule } from '../../../../care/rounds/planning/conflicts.ts';
import type { PlanInstance } from '../../../../care/rounds/planning/instance.ts';
import { clock } from '../../../../care/rounds/planning/minutes.ts';
import type { TriedRepair } from '../../../../care/rounds/planning/repairs.ts';
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

/** What a plan breaks, each thing once. */
export function sayBroken(broken: readonly Broken[], { words, names }: Voice): readonly string[] {
  const said = broken.map(({ rule, person, staff, minutes = 0 }) => {
    const who =
      ABOUT_STAFF.has(rule) && staff !== undefined
        ? names.staff(staff as StaffId)
        : names.person(person as PersonId | undefined);
    return words.planner.broken[rule](who, minutes);
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
    const [window] = person?.windows ?? [];
    const at =
      rule.rule === 'windows' && window
        ? `${clock(window.from)} to ${clock(window.until)}`
        : clock(person?.notBefore ?? 0);
    return say(names.person(rule.person as PersonId), at);
  }
  return say('', '');
}

export function sayRepair(
  { repair, finish, chance }: TriedRepair,
  { words, names }: Voice,
): string {
  const say = words.planner.repairs[repair.repair];
  const who =
    'staff' in repair
      ? names.staff(repair.staff as StaffId)
      : repair.repair === 'leave'
        ? words.planner.list(repair.people.map((id) => names.person(id as PersonId)))
        : '';
  const count =
    'minutes' in repair ? repair.minutes : repair.repair === 'more-supplies' ? repair.people : 0;
  return `${say(who, count)} ${words.planner.repaired(clock(finish), chance)}`;
}

export function sayBecause(because: Because, { words, names }: Voice): string {
  const say = words.planner.because[because.because];
  if ('person' in because) return say(names.person(because.person as PersonId));
  if ('staff' in because) return say(names.staff(because.staff as StaffId));
  if ('from' in because) return say(clock(because.from));
  return say('until' in because ? clock(because.until) : '');
}
