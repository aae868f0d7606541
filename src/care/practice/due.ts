import type { Home } from '../home.ts';
import type { PersonId } from '../ids.ts';
import { housemates } from '../people/person.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Day } from '../time.ts';
import { addDays } from '../time.ts';
import type { Ladder } from './ladder.ts';
import { practiceOf } from './practice.ts';

/** A session of practice that belongs to a day: whom, which step, how many minutes it takes. */
export interface PracticeDue {
  readonly person: PersonId;
  readonly step: Ladder[number];
  /** Counted from 1, for people. */
  readonly number: number;
  readonly of: number;
  readonly minutes: number;
}

/** Everybody whose practice is due on a day: work with minutes, for Now and for whoever plans the day. */
export function practiceDueOn(home: Home, on: Day): PracticeDue[] {
  const every = policyOn(home, on).policy.practice?.everyDays.value;
  if (every === undefined) return [];
  return housemates(home).flatMap(({ id, whereabouts }): PracticeDue[] => {
    const practice = practiceOf(home, id, on);
    if (practice === undefined || practice.ready || whereabouts.where !== 'here') return [];
    if (practice.lastOn !== undefined && addDays(practice.lastOn, every) > on) return [];
    const step = practice.steps[practice.next];
    if (step === undefined) return [];
    const of = practice.steps.length;
    return [{ person: id, step, number: practice.next + 1, of, minutes: step.minutes }];
  });
}
