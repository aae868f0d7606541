import { useRef } from 'preact/hooks';
import { type Deafness, hearStep, isDeaf, usualDeafMs } from './deafness.ts';

/** A monotonic clock in milliseconds, such as `() => performance.now()`. */
export type MonotonicClock = () => number;

export interface DeafnessOptions {
  readonly step: string;
  readonly now: MonotonicClock;
  readonly deafMs?: number | undefined;
}

/** Tells whether a control should take no notice yet. Ask at the moment of the press. */
export function useDeafness({ step, now, deafMs = usualDeafMs }: DeafnessOptions): () => boolean {
  const state = useRef<Deafness | undefined>(undefined);
  state.current = hearStep(state.current, step, now());
  const { current } = state;
  return () => isDeaf(current, now(), deafMs);
}
