import type { Conflict, PlanRule } from '../../care/rounds/planning/conflicts.ts';
import type { PlanInstance } from '../../care/rounds/planning/instance.ts';
import { clock } from '../../care/rounds/planning/minutes.ts';
import type { Repair, TriedRepair } from '../../care/rounds/planning/repairs.ts';

/** Names where the instance gives them, ids where it does not. */
function namesIn({ people, staff }: PlanInstance) {
  const of = (list: readonly { readonly id: string; readonly name?: string | undefined }[]) => {
    const names = new Map(list.map(({ id, name }) => [id, name ?? id]));
    return (id: string): string => names.get(id) ?? id;
  };
  return { person: of(people), staff: of(staff) };
}

const excluded = ({ people }: PlanInstance, person: string): readonly string[] =>
  people.find(({ id }) => id === person)?.excluded ?? [];

/** A rule in plain words, as it stands in this instance. */
export function sayRule(instance: PlanInstance, rule: PlanRule): string {
  const { person, staff } = namesIn(instance);
  const { rules } = instance;
  switch (rule.rule) {
    case 'courier':
      return `The last courier comes at ${clock(Math.max(...rules.collections))}, and packing takes ${rules.packMinutes} minutes.`;
    case 'pairs':
      return `At most ${rules.pairs} ${rules.pairs === 1 ? 'pair is' : 'pairs are'} at work at one time.`;
    case 'cohort-order':
      return 'A pair never goes back to a cohort with less risk.';
    case 'units-apart':
      return 'Units are kept apart.';
    case 'storage':
      return `A tube waits no longer than ${rules.storageMinutes ?? 0} minutes for its courier.`;
    case 'register':
      return `Everything is registered by ${clock(rules.register?.by ?? 0)}.`;
    case 'supplies':
      return 'There are only so many kits, gloves, aprons and masks.';
    case 'shift': {
      const member = instance.staff.find(({ id }) => id === rule.staff);
      return `${staff(rule.staff)} is here from ${clock(member?.shift.from ?? 0)} to ${clock(member?.shift.until ?? 0)}.`;
    }
    case 'away':
      return `${staff(rule.staff)} has breaks or other duties.`;
    case 'swabber':
      return `${staff(rule.staff)} may not swab.`;
    case 'recorder':
      return `${staff(rule.staff)} may not record.`;
    case 'apart':
      return `${staff(rule.staff)} and ${staff(rule.other)} do not work together.`;
    case 'windows': {
      const found = instance.people.find(({ id }) => id === rule.person);
      const times = found?.windows.map(({ from, until }) => `${clock(from)} to ${clock(until)}`);
      return `${person(rule.person)} can be visited only ${times?.join(' or ') ?? ''}.`;
    }
    case 'meals':
      return `${person(rule.person)} is not swabbed while eating, nor for ${rules.mealGapMinutes} minutes after.`;
    case 'preparation':
      return `${person(rule.person)} needs a preparation first.`;
    case 'excluded':
      return `${person(rule.person)} does not want ${excluded(instance, rule.person).map(staff).join(', ')}.`;
    case 'gender': {
      const found = instance.people.find(({ id }) => id === rule.person);
      return `${person(rule.person)} is swabbed only by a ${found?.swabberGender ?? ''}.`;
    }
    case 'not-before': {
      const found = instance.people.find(({ id }) => id === rule.person);
      return `${person(rule.person)} is not visited before ${clock(found?.notBefore ?? 0)}.`;
    }
  }
}

export function sayRepair(instance: PlanInstance, repair: Repair): string {
  const { person, staff } = namesIn(instance);
  switch (repair.repair) {
    case 'ask':
      return repair.wishes
        .map((wish) => `Ask ${person(wish.person)} if ${staff(wish.staff)} may ${wish.may}.`)
        .join(' ');
    case 'courier-later':
      return `Ask the courier to come ${repair.minutes} minutes later.`;
    case 'begin-earlier':
      return `Begin ${repair.minutes} minutes earlier.`;
    case 'stay-longer':
      return `Ask ${staff(repair.staff)} to stay ${repair.minutes} minutes longer.`;
    case 'no-break':
      return `Move the breaks or other duties of ${staff(repair.staff)} to after the round.`;
    case 'borrow-swabber':
      return 'Borrow somebody who may swab and record.';
    case 'borrow-recorder':
      return 'Borrow somebody who may record.';
    case 'borrow-pair':
      return 'Borrow a second pair.';
    case 'change-pairs':
      return 'Let one take over from another in the middle of the round.';
    case 'more-supplies':
      return `Get more kits and PPE, for ${repair.people} people.`;
    case 'leave':
      return `Leave ${repair.people.map(person).join(', ')} to another day.`;
  }
}

export const sayConflict = (instance: PlanInstance, conflict: Conflict): readonly string[] =>
  conflict.rules.map((rule) => sayRule(instance, rule));

export const sayTried = (instance: PlanInstance, { repair, finish, chance }: TriedRepair): string =>
  `${sayRepair(instance, repair)} Then the last visit ends at ${clock(finish)}, in time on ${(100 * chance).toFixed(0)} of 100 days.`;
