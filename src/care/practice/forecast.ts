import { sessionsFor, topReachedBy } from '../../statistics/ladder-forecast.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Day } from '../time.ts';
import { addDays, daysBetween } from '../time.ts';
import type { Practice } from './practice.ts';

/** Further than this nothing is said. */
const MOST_SESSIONS = 40;
const LOW = 0.1;
const MIDDLE = 0.5;
const HIGH = 0.9;

/** When somebody may be ready, told with how unsure it is; or that too little is known to say. */
export type Forecast =
  | { readonly state: 'too-few'; readonly have: number; readonly need: number }
  | {
      readonly state: 'told';
      readonly from: number;
      /** As many sessions of this home the chances were learnt from. */
      readonly low: number;
      /** Undefined: more sessions than are looked at. */
      readonly middle: number | undefined;
      readonly high: number | undefined;
      readonly lowOn: Day;
      readonly highOn: Day | undefined;
      /** Chance, 0 to 1, of being ready on the morning of a day. */
      readonly chanceBy: (day: Day) => number;
    };

/**
 * Learnt from every session at this home, of everybody: how often a step was done, not yet, or upset them.
 * The model and its limits stand in statistics/ladder-forecast.ts. It takes sessions to be alike, which
 * people are not: staff who know the person know more.
 */
export function forecastFor(home: Home, practice: Practice, today: Day): Forecast {
  const all = standing(factsIn(home, 'practice', 'home'), 'practice.session');
  const rules = policyOn(home, today).policy.practice;
  const need = rules?.fewestSessions.value ?? 10;
  if (all.length < need) return { state: 'too-few', have: all.length, need };
  const count = (end: string) => all.filter(({ data }) => data.end === end).length;
  const counts = { up: count('done'), stay: count('not-yet'), down: count('distressed') };
  const climb = { at: practice.next, steps: practice.steps.length, most: MOST_SESSIONS };
  const followed = topReachedBy(counts, climb);
  const reached = followed.ok ? followed.value : [];
  const every = rules?.everyDays.value ?? 1;
  const first =
    practice.lastOn === undefined || addDays(practice.lastOn, every) <= today
      ? today
      : addDays(practice.lastOn, every);
  const dayOfSession = (session: number): Day => addDays(first, (session - 1) * every);
  const low = sessionsFor(reached, LOW);
  const high = sessionsFor(reached, HIGH);
  return {
    state: 'told',
    from: all.length,
    low: low ?? MOST_SESSIONS,
    middle: sessionsFor(reached, MIDDLE),
    high,
    lowOn: dayOfSession(low ?? MOST_SESSIONS),
    highOn: high === undefined ? undefined : dayOfSession(high),
    chanceBy: (day) => {
      const sessions = Math.floor((daysBetween(first, day) + every - 1) / every);
      if (sessions <= 0) return practice.ready ? 1 : 0;
      return reached[Math.min(sessions, MOST_SESSIONS) - 1] ?? 0;
    },
  };
}
