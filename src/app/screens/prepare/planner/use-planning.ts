import { useEffect, useRef, useState } from 'preact/hooks';
import type { Conflict } from '../../../../care/rounds/planning/conflicts.ts';
import type { PlanInstance } from '../../../../care/rounds/planning/instance.ts';
import type { MadePlan } from '../../../../care/rounds/planning/make-plan.ts';
import type { TriedRepair } from '../../../../care/rounds/planning/repairs.ts';
import type { PlanningAsk, PlanningTold } from './planning-talk.ts';

export interface PlanFound {
  readonly instance: PlanInstance;
  readonly made: MadePlan;
  /** Undefined until it is known, or where everything is well. */
  readonly changes:
    | { readonly conflict: Conflict | undefined; readonly repairs: readonly TriedRepair[] }
    | undefined;
  /** How far the search for changes is, from 0 to 1; undefined when it is over or was stopped. */
  readonly asking: number | undefined;
}

export type PlanningState =
  | { readonly at: 'idle' }
  | { readonly at: 'working'; readonly share: number }
  | { readonly at: 'broke' }
  | ({ readonly at: 'found' } & PlanFound);

export interface Planning {
  readonly state: PlanningState;
  readonly begin: (instance: PlanInstance) => void;
  readonly stop: () => void;
  readonly drop: () => void;
}

/** One seed for all: whoever asks the same gets the same plan, on every tablet. */
const SEED = 1;

/** The planner in its worker: it runs beside the page, with no signal, and can be stopped. */
export function usePlanning(): Planning {
  const [state, setState] = useState<PlanningState>({ at: 'idle' });
  const worker = useRef<Worker | undefined>(undefined);
  const end = (): void => {
    worker.current?.terminate();
    worker.current = undefined;
  };
  useEffect(() => end, []);

  const hear = (instance: PlanInstance, told: PlanningTold): void => {
    switch (told.told) {
      case 'progress':
        setState({ at: 'working', share: told.share });
        return;
      case 'made': {
        const { made } = told;
        const short = made.chance.packed < instance.rules.chanceAtLeast;
        const looks = !made.stopped && (short || made.plan.leftOut.length > 0);
        const asking = looks ? 0 : undefined;
        setState({ at: 'found', instance, made, changes: undefined, asking });
        return;
      }
      case 'looking':
        setState((was) => (was.at === 'found' ? { ...was, asking: told.share } : was));
        return;
      case 'changes': {
        const { conflict, repairs, more } = told;
        setState((was) =>
          was.at === 'found'
            ? { ...was, changes: { conflict, repairs }, asking: more ? was.asking : undefined }
            : was,
        );
      }
    }
  };
  const say = (ask: PlanningAsk): void => worker.current?.postMessage(ask);

  return {
    state,
    begin: (instance) => {
      end();
      const made = new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });
      made.addEventListener('message', ({ data }: MessageEvent<PlanningTold>) =>
        hear(instance, data),
      );
      made.addEventListener('error', () => setState({ at: 'broke' }));
      worker.current = made;
      setState({ at: 'working', share: 0 });
      say({ ask: 'plan', instance, seed: SEED });
    },
    stop: () => {
      if (state.at !== 'found') {
        say({ ask: 'stop' });
        return;
      }
      // The plan is there: what is still being looked for can be dropped where it stands.
      end();
      setState({ ...state, asking: undefined });
    },
    drop: () => {
      end();
      setState({ at: 'idle' });
    },
  };
}
