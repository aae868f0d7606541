import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, lastStanding, standing } from '../home.ts';
import type { PersonId } from '../ids.ts';
import { policiesKnown, policyOn } from '../policy/in-force.ts';
import type { Day } from '../time.ts';
import { dayOf } from '../time.ts';
import type { StepEnd } from './facts.ts';
import type { Ladder } from './ladder.ts';

export type Session = FactOf<'practice.session'>;

/** Where one person stands on the ladder. */
export interface Practice {
  readonly steps: Ladder;
  readonly sessions: readonly Session[];
  /** The step of the next session, counted from 0; as many as there are steps once all are done. */
  readonly next: number;
  readonly ready: boolean;
  /** Where the ladder stood after each session: what is drawn. */
  readonly heights: readonly number[];
  readonly lastOn: Day | undefined;
}

/** One step a session: up after success, back a step after distress, else the same step again. */
export function moved(at: number, end: StepEnd, steps: number): number {
  if (end === 'done') return Math.min(at + 1, steps);
  return end === 'distressed' ? Math.max(at - 1, 0) : at;
}

/** Undefined where the plan asks for no practice, or the policy has no ladder. */
export function practiceOf(home: Home, person: PersonId, on: Day): Practice | undefined {
  const ladder = policyOn(home, on).policy.practice?.steps;
  const facts = factsIn(home, 'person', person);
  const asked = lastStanding(facts, 'practice.asked');
  if (ladder === undefined || asked?.data.wanted !== true) return undefined;
  const first = Math.max(0, indexOf(ladder, asked.data.from));
  const sessions = standing(facts, 'practice.session').filter(({ at }) => at >= asked.at);
  let at = first;
  const heights = sessions.map(({ data }) => {
    // A step that the policy no longer has is counted from where the ladder stands.
    const done = indexOf(ladder, data.step);
    at = moved(done === -1 ? at : done, data.end, ladder.length);
    return at;
  });
  const last = sessions.at(-1);
  return {
    ...{ steps: ladder, sessions, next: at, ready: at >= ladder.length, heights },
    lastOn: last && dayOf(last.at, home.service.zone),
  };
}

/** What a step is called, also one that the ladder has no more: as the newest policy that had it calls it. */
export const stepTitle = (home: Home, step: string): string =>
  policiesKnown(home)
    .flatMap(({ practice }) => practice?.steps ?? [])
    .findLast((each) => each.step === step)?.title ?? step;

const indexOf = (ladder: Ladder, step: string | undefined): number =>
  ladder.findIndex((each) => each.step === step);
