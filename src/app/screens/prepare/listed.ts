import type { Home } from '../../../care/home.ts';
import type { PersonId } from '../../../care/ids.ts';
import type { Place } from '../../../care/rounds/first-order.ts';
import { firstOrder, placeOf } from '../../../care/rounds/first-order.ts';
import type { Candidate } from './candidates.ts';
import { isDefault } from './candidates.ts';
import type { Draft } from './draft.ts';

/** Whether somebody is on the list as it stands. Who has begun stays on it. */
export const isOn = (draft: Draft, each: Candidate): boolean =>
  each.group === 'begun' || (draft.picked[each.person] ?? isDefault(each));

/** The people on the list, in order: by hand where somebody moved them, newcomers where they fit. */
export function listed(home: Home, draft: Draft, candidates: readonly Candidate[]): Place[] {
  const on = candidates.filter((each) => isOn(draft, each)).map(({ person }) => person);
  const when = { on: draft.day, round: draft.round };
  const sensible = firstOrder(home, on, when);
  if (draft.order === undefined) return sensible;
  const order = draft.order.filter((person) => on.includes(person));
  for (const [at, { person }] of sensible.entries()) {
    if (!order.includes(person)) insertAfter(order, person, sensible[at - 1]?.person);
  }
  return order.map((person) => placeOf(home, person, when));
}

/** A newcomer follows whoever would stand before them in the sensible order. */
function insertAfter(order: PersonId[], person: PersonId, before: PersonId | undefined): void {
  order.splice(before === undefined ? 0 : order.indexOf(before) + 1, 0, person);
}

/** One person one place up or down; at the end of the list nothing moves. */
export function moved(
  order: readonly PersonId[],
  person: PersonId,
  by: -1 | 1,
): readonly PersonId[] {
  const from = order.indexOf(person);
  const to = from + by;
  if (from < 0 || to < 0 || to >= order.length) return order;
  const next = [...order];
  next.splice(from, 1);
  next.splice(to, 0, person);
  return next;
}
