import type { Conflict } from '../../../../care/rounds/planning/conflicts.ts';
import { findingConflict } from '../../../../care/rounds/planning/conflicts.ts';
import type { PlanInstance } from '../../../../care/rounds/planning/instance.ts';
import type { MadePlan } from '../../../../care/rounds/planning/make-plan.ts';
import { makingPlan } from '../../../../care/rounds/planning/make-plan.ts';
import { findingRepairs } from '../../../../care/rounds/planning/repairs.ts';
import type { PlanningAsk, PlanningTold } from './planning-talk.ts';

const TELL_EVERY = 150;
let stop = false;

const tell = (told: PlanningTold): void => postMessage(told);

/** Lets a message in: a worker that only reckons would never hear the stop. */
const breathe = (): Promise<void> => new Promise((done) => setTimeout(done, 0));

async function plan(instance: PlanInstance, seed: number): Promise<void> {
  const making = makingPlan(instance, { seed, shouldStop: () => stop });
  let last = -Infinity;
  for (;;) {
    const step = making.next();
    if (step.done === true) {
      const made = step.value;
      tell({ told: 'made', made });
      const short = made.chance.packed < instance.rules.chanceAtLeast;
      if (!stop && (short || made.plan.leftOut.length > 0)) look(instance, made, seed);
      return;
    }
    const now = performance.now();
    if (now - last < TELL_EVERY) continue;
    last = now;
    tell({ told: 'progress', ...step.value });
    await breathe();
  }
}

/**
 * What conflicts, then what would be enough to change, each told as soon as it is found. Whoever
 * stops this ends the worker: what was told until then stays.
 */
function look(instance: PlanInstance, made: MadePlan, seed: number): void {
  let conflict: Conflict | undefined;
  const left = made.plan.leftOut.length > 0;
  if (left) {
    const finding = findingConflict(instance, { seed });
    let step = finding.next();
    for (; step.done !== true; step = finding.next())
      tell({ told: 'looking', share: step.value / 2 });
    conflict = step.value;
    tell({ told: 'changes', conflict, repairs: [], more: true });
  }
  const finding = findingRepairs(instance, made, { seed });
  let step = finding.next();
  for (; step.done !== true; step = finding.next()) {
    const { share, found } = step.value;
    tell({ told: 'changes', conflict, repairs: found, more: true });
    tell({ told: 'looking', share: left ? (1 + share) / 2 : share });
  }
  tell({ told: 'changes', conflict, repairs: step.value, more: false });
}

addEventListener('message', ({ data }: MessageEvent<PlanningAsk>) => {
  stop = data.ask === 'stop';
  if (data.ask === 'plan') void plan(data.instance, data.seed);
});
