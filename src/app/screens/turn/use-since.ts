import { useEffect, useRef, useState } from 'preact/hooks';
import type { Instant } from '../../../care/time.ts';
import { elapsed } from '../../../care/time.ts';
import type { Desk } from '../../desk/desk.ts';

/**
 * Milliseconds since an instant, on the monotonic clock: a clock that is put right in the middle of a
 * swab does not make it longer. After a restart it goes on from the stored instant.
 */
export function useSince(desk: Desk, at: Instant): () => number {
  const start = useRef<{ at: Instant; mono: number } | undefined>(undefined);
  if (start.current?.at !== at) {
    start.current = { at, mono: desk.monotonic() - Math.max(0, elapsed(at, desk.now())) };
  }
  const { mono } = start.current;
  return () => desk.monotonic() - mono;
}

/** Draws again a few times a second, so that a dial moves. */
export function useTicking(perSecond = 5): void {
  const [, tick] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => tick((n) => n + 1), 1000 / perSecond);
    return () => clearInterval(timer);
  }, [perSecond]);
}
