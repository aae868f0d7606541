import type { Home } from '../care/home.ts';
import type { PersonId } from '../care/ids.ts';
import { policyOn } from '../care/policy/in-force.ts';
import type { StepEnd } from '../care/practice/facts.ts';
import { practiceOf } from '../care/practice/practice.ts';
import { allow, refuse } from '../care/refusal.ts';
import { standingFor } from './describe.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';

/** The plan asks for practice, from a step of the ladder on, or no longer does. */
export function askPractice(
  home: Home,
  given: { readonly person: PersonId; readonly wanted: boolean; readonly from?: string },
  doing: Doing,
): Outcome {
  const ladder = policyOn(home, today(home, doing)).policy.practice?.steps;
  if (ladder === undefined) return refuse({ reason: 'no-ladder' });
  const { person, wanted, from } = given;
  const known = from === undefined || ladder.some(({ step }) => step === from);
  if (!known) return refuse({ reason: 'empty', field: 'from' });
  const old = standingFor(home, ['person', person], { kind: 'practice.asked' });
  return allow([
    {
      kind: 'practice.asked',
      data: { person, wanted, ...(from !== undefined && { from }), ...old },
    },
  ]);
}

/** One session, one step: which one is where the person stands, and is not chosen. */
export function recordSession(
  home: Home,
  given: {
    readonly person: PersonId;
    readonly end: StepEnd;
    readonly endedWell: boolean;
    readonly minutes?: number;
  },
  doing: Doing,
): Outcome {
  const practice = practiceOf(home, given.person, today(home, doing));
  if (practice === undefined) return refuse({ reason: 'practice-not-asked', person: given.person });
  const step = practice.steps[Math.min(practice.next, practice.steps.length - 1)];
  if (step === undefined) return refuse({ reason: 'no-ladder' });
  const { person, end, minutes } = given;
  const endedWell = end === 'done' || given.endedWell;
  const took = minutes !== undefined && minutes >= 1 && minutes <= 240 ? { minutes } : {};
  return allow([
    { kind: 'practice.session', data: { person, step: step.step, end, endedWell, ...took } },
  ]);
}
