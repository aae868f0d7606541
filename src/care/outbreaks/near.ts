import { turnsWith } from '../custody/person-turns.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import { keysOn } from '../home.ts';
import type { PersonId, StaffId, TurnId } from '../ids.ts';
import { housemates, personOf } from '../people/person.ts';
import type { Swab } from '../rounds/history.ts';
import type { Day } from '../time.ts';
import { dayOf, daysBetween } from '../time.ts';

/** Contact counts from so long before the first sign or the swab (48 h; from memory, not verified). */
export const BEFORE_DAYS = 2;

export interface Near {
  readonly people: readonly { readonly person: PersonId; readonly why: 'room' | 'unit' }[];
  /** Staff who were with them in a turn in these days, and on which. */
  readonly staff: readonly { readonly staff: StaffId; readonly on: Day }[];
}

/**
 * Who was near somebody around a swab, as far as the facts can tell: the same room, the same unit, and
 * staff of their turns. A list to begin asking from, not the whole answer.
 */
export function nearTo(home: Home, { turn, on }: Swab): Near {
  const own = personOf(home, turn.person);
  const people = housemates(home)
    .filter(({ id, whereabouts }) => id !== own.id && whereabouts.where === 'here')
    .flatMap((other): Near['people'][number][] => {
      if (own.room !== '' && other.room === own.room) return [{ person: other.id, why: 'room' }];
      if (own.unit !== undefined && other.unit === own.unit)
        return [{ person: other.id, why: 'unit' }];
      return [];
    })
    .sort((a, b) => (a.why === b.why ? 0 : a.why === 'room' ? -1 : 1));
  const staff = new Map<StaffId, Day>();
  for (const each of turnsWith(home, own.id)) {
    const day = dayOf(each.openedAt, home.service.zone);
    const apart = daysBetween(day, on);
    if (apart < 0 || apart > BEFORE_DAYS) continue;
    for (const { swabber, recorder } of each.pairs)
      for (const id of [swabber, recorder]) staff.set(id, day);
  }
  return { people, staff: [...staff].map(([id, day]) => ({ staff: id, on: day })) };
}

/** Other people whom the same pair had in hand on the day of the swab, after this person. */
export function swabbedAfter(home: Home, { turn, on }: Swab): PersonId[] {
  const pair = new Set([turn.pair.swabber, turn.pair.recorder]);
  const later = [...keysOn(home, 'turn')].flatMap((id) => {
    const other = turnOf(home, id as TurnId);
    if (other === undefined || other.person === turn.person || other.openedAt <= turn.openedAt)
      return [];
    const sameDay = dayOf(other.openedAt, home.service.zone) === on;
    return sameDay && (pair.has(other.pair.swabber) || pair.has(other.pair.recorder))
      ? [other.person]
      : [];
  });
  return [...new Set(later)];
}
