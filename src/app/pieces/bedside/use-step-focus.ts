import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

/**
 * Keeps a keyboard or screen reader in its place when the step changes: a control that is still there
 * keeps the focus (the new title is a live region and is read out); when it has gone, the title takes it.
 * On a small screen the title is also brought into view.
 */
export function useStepFocus(step: string): RefObject<HTMLHeadingElement> {
  const heading = useRef<HTMLHeadingElement>(null);
  const shown = useRef(step);
  useLayoutEffect(() => {
    if (shown.current === step) return;
    shown.current = step;
    heading.current?.scrollIntoView({ block: 'start' });
    const { activeElement } = document;
    if (activeElement === null || activeElement === document.body)
      heading.current?.focus({ preventScroll: true });
  }, [step]);
  return heading;
}
