import type { Conflict } from '../../../../care/rounds/planning/conflicts.ts';
import type { PlanInstance } from '../../../../care/rounds/planning/instance.ts';
import type { MadePlan, PlanningProgress } from '../../../../care/rounds/planning/make-plan.ts';
import type { TriedRepair } from '../../../../care/rounds/planning/repairs.ts';

/** What is said to the worker. */
export type PlanningAsk =
  | { readonly ask: 'plan'; readonly instance: PlanInstance; readonly seed: number }
  | { readonly ask: 'stop' };

/**
 * What the worker says: how far it is, then the plan, then, where it falls short, what could be done:
 * more than once, while it goes on looking.
 */
export type PlanningTold =
  | ({ readonly told: 'progress' } & PlanningProgress)
  | { readonly told: 'made'; readonly made: MadePlan }
  | { readonly told: 'looking'; readonly share: number }
  | {
      readonly told: 'changes';
      readonly conflict: Conflict | undefined;
      readonly repairs: readonly TriedRepair[];
      /** Whether it is still looking for more. */
      readonly more: boolean;
    };
