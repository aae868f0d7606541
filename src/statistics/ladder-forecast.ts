import { count, finite, firstRefusal } from './refusal/checks.ts';
import { given, type Outcome, type Refusal, refuse } from './refusal/refusal.ts';

/** How often a session went up a step, stayed, or went back one. */
export interface LadderCounts {
  readonly up: number;
  readonly stay: number;
  readonly down: number;
}

export interface Ladder {
  /** Steps already climbed, 0 to `steps`. */
  readonly at: number;
  readonly steps: number;
  /** Sessions looked ahead. */
  readonly most: number;
}

// most^3 x steps: under a second. A year of weekly sessions on seven steps needs a million.
const MOST_WORK = 1e8;

function check({ up, stay, down }: LadderCounts, { at, steps, most }: Ladder): Refusal | undefined {
  const refused = firstRefusal(
    ...[up, stay, down].map((seen) =>
      seen >= -1
        ? finite('a count of sessions', seen)
        : refuse('out-of-range', `A count of sessions must be 0 or more, and it is ${seen}.`),
    ),
    count('at', at),
    count('steps', steps),
    count('most', most),
  );
  if (refused) return refused;
  if (up + stay + down <= -3)
    return refuse('undefined', 'Nothing is known of the sessions, not even beforehand.');
  return most ** 3 * Math.max(1, steps) <= MOST_WORK
    ? undefined
    : refuse('too-large', `${most} sessions on ${steps} steps cannot be followed exactly here.`);
}

/**
 * The chance that a climber who stands on step `at` of `steps` has reached the top after 1, 2, … `most`
 * more sessions.
 *
 * Model: every session goes up with a chance p, back with a chance q, or stays; p and q are the same for
 * every session and every climber, and not known. What is known of them is `counts`, with one of each added
 * beforehand (a uniform Dirichlet prior). The answer is exact: the predictive chances of the Pólya urn are
 * followed through every number of ups and downs, not simulated. Nobody goes below the first step.
 *
 * With `down` never happening the time to the top is beta negative binomial; with counts large it is
 * negative binomial. Both are checked beside this file. Cost about `most`² × `steps` states a session.
 *
 * A count of -1 takes its prior away: that never happens. Refused above `most`³ × `steps` = 10⁸.
 * @returns `most` chances, rising, each 0 to 1
 */
export function topReachedBy(counts: LadderCounts, ladder: Ladder): Outcome<readonly number[]> {
  const refused = check(counts, ladder);
  if (refused) return refused;
  const { at, steps, most } = ladder;
  return given(at >= steps ? Array.from({ length: most }, () => 1) : follow(counts, ladder));
}

function follow(counts: LadderCounts, { at, steps, most }: Ladder): readonly number[] {
  const a = counts.up + 1;
  const b = counts.stay + 1;
  const c = counts.down + 1;
  const total = a + b + c;
  const width = most + 1;
  const index = (ups: number, downs: number, place: number) =>
    (ups * width + downs) * steps + place;
  let chances = new Float64Array(width * width * steps);
  chances[index(0, 0, at)] = 1;
  const reached: number[] = [];
  let top = 0;
  for (let done = 0; done < most; done += 1) {
    const next = new Float64Array(chances.length);
    const add = (where: number, chance: number) => {
      next[where] = (next[where] ?? 0) + chance;
    };
    for (let ups = 0; ups <= done; ups += 1) {
      for (let downs = 0; ups + downs <= done; downs += 1) {
        for (let place = 0; place < steps; place += 1) {
          const chance = chances[index(ups, downs, place)] ?? 0;
          if (chance === 0) continue;
          const each = chance / (total + done);
          const up = each * (a + ups);
          if (place + 1 === steps) top += up;
          else add(index(ups + 1, downs, place + 1), up);
          add(index(ups, downs, place), each * (b + done - ups - downs));
          add(index(ups, downs + 1, Math.max(place - 1, 0)), each * (c + downs));
        }
      }
    }
    chances = next;
    reached.push(Math.min(1, top));
  }
  return reached;
}

/** The first session by which a chance is reached, counted from 1; undefined if not among them. */
export const sessionsFor = (reached: readonly number[], chance: number): number | undefined => {
  const i = reached.findIndex((each) => each >= chance);
  return i === -1 ? undefined : i + 1;
};
