import { conflictOf } from '../../../../care/rounds/planning/conflicts.ts';
import type { PlanInstance } from '../../../../care/rounds/planning/instance.ts';
import { makingPlan } from '../../../../care/rounds/planning/make-plan.ts';
import { repairsFor } from '../../../../care/rounds/planning/repairs.ts';
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
      if (!stop && (short || made.plan.leftOut.length > 0)) {
        await breathe();
        const conflict = made.plan.leftOut.length > 0 ? conflictOf(instance, { seed }) : undefined;
        tell({ told: 'changes', conflict, repairs: repairsFor(instance, made, { seed }) });
      }
      return;
    }
    const now = performance.now();
    if (now - last < TELL_EVERY) continue;
    last = now;
    tell({ told: 'progress', ...step.value });
    await breathe();
  }
}

addEventListener('message', ({ data }: MessageEvent<PlanningAsk>) => {
  stop = data.ask === 'stop';
  if (data.ask === 'plan') void plan(data.instance, data.seed);
});
