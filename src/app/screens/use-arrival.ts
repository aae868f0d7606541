import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { hasMoved } from './arrivals.ts';

/** For a page's title: it takes the focus on arrival, so that a screen reader says where one is. */
export function useArrival(): RefObject<HTMLHeadingElement> {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (!hasMoved()) return;
    window.scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, []);
  return heading;
}
