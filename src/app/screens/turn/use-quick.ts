import { useRef } from 'preact/hooks';
import { useDesk } from '../../desk/desk.ts';

/** Under this, a tap that says "I looked" is marked as not watched (a proposal of ours; no source). */
const QUICK_MS = 2000;

/** Whether a step was on the screen so briefly that nobody can have looked. */
export function useQuick(step: string): () => { quick?: true } {
  const desk = useDesk();
  const shown = useRef<{ step: string; at: number } | undefined>(undefined);
  if (shown.current?.step !== step) shown.current = { step, at: desk.monotonic() };
  const { at } = shown.current;
  return () => (desk.monotonic() - at < QUICK_MS ? { quick: true } : {});
}
