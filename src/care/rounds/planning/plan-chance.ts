import { wilson } from '../../../statistics/proportions/wilson.ts';
import { seededChance } from '../../../statistics/random/chance.ts';
import { drawDay } from './draw-day.ts';
import type { PlanInstance } from './instance.ts';
import type { RoundPlanMade } from './plan.ts';
import { playDay, stageOf } from './play-day.ts';

export interface PlanChance {
  /** Share of imagined days on which everything is packed by the last collection. */
  readonly packed: number;
  /** Standard error of `packed`, and the interval that holds it with 95 in 100 (Wilson). */
  readonly error: number;
  readonly interval: readonly [number, number];
  /** Share on which, besides, nobody's own time was missed. */
  readonly everyone: number;
  /** When the last visit ends on 1 in 10, 5 in 10 and 9 in 10 days. */
  readonly finish: readonly [number, number, number];
  /** When it ends on as many days as the rules ask for. */
  readonly safeFinish: number;
  /** What those who are missed cost on average, as if they had been left out. */
  readonly missedCost: number;
  readonly draws: number;
}

/**
 * The chance that a plan can be kept, by playing it through so many imagined days: the same days for
 * every plan with the same seed. Source: plain Monte Carlo with common random numbers (Law & Kelton,
 * Simulation Modeling and Analysis, chapter 11; from memory).
 */
export function chanceOf(
  instance: PlanInstance,
  plan: RoundPlanMade,
  { seed, draws }: { readonly seed: number; readonly draws: number },
): PlanChance {
  const { rules } = instance;
  const by = Math.max(...rules.collections) - rules.packMinutes;
  const chance = seededChance(seed);
  const stage = stageOf(instance, plan);
  const finishes = new Float64Array(draws);
  const weight = new Map(instance.people.map((p) => [p.id, p.weight * instance.weights.leftOut]));
  let [packed, everyone, missedCost] = [0, 0, 0];
  for (let i = 0; i < draws; i++) {
    const { finish, missed, pairGone } = playDay(stage, plan, drawDay(chance, instance.people));
    finishes[i] = finish;
    for (const id of missed) missedCost += weight.get(id) ?? 0;
    if (finish > by || pairGone) continue;
    packed++;
    if (missed.length === 0) everyone++;
  }
  finishes.sort();
  const at = (share: number): number =>
    finishes[Math.min(draws - 1, Math.max(0, Math.ceil(share * draws) - 1))] ?? instance.from;
  const share = packed / draws;
  const interval = wilson({ events: packed, trials: draws });
  if (!interval.ok) throw new Error(interval.detail);
  return {
    packed: share,
    error: Math.sqrt((share * (1 - share)) / draws),
    interval: [interval.value.lower, interval.value.upper],
    everyone: everyone / draws,
    finish: [at(0.1), at(0.5), at(0.9)],
    safeFinish: at(rules.chanceAtLeast),
    missedCost: missedCost / draws,
    draws,
  };
}
