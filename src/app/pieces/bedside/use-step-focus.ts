import type { RefObject } from 'preact';
import { createContext } from 'preact';
import { useContext, useLayoutEffect, useRef } from 'preact/hooks';

/** What the step before leaves to the next, which may be a screen of its own. */
export interface StepMemory {
  step: string;
  /** Whoever works by keyboard pressed the big button last, or has pressed nothing else since. */
  onBigButton: boolean;
}

const Memory = createContext<StepMemory | undefined>(undefined);
export const StepMemoryProvider = Memory.Provider;

/**
 * Keeps a keyboard or screen reader in its place when the step changes: a control that is still there
 * keeps the focus; the big button hands it to the next step's; else the new title takes it. On a small
 * screen the title is also brought into view.
 */
export function useStepFocus(step: string): RefObject<HTMLHeadingElement> {
  const heading = useRef<HTMLHeadingElement>(null);
  const own = useRef<StepMemory>({ step, onBigButton: false });
  const memory = useContext(Memory) ?? own.current;
  useLayoutEffect(() => {
    if (memory.step !== step) {
      memory.step = step;
      heading.current?.scrollIntoView({ block: 'start' });
      if (!isHeld(document.activeElement)) {
        const big = memory.onBigButton
          ? heading.current?.closest('main')?.querySelector<HTMLElement>('.big-button')
          : undefined;
        (big ?? heading.current)?.focus({ preventScroll: true });
      }
    }
    const title = heading.current;
    return () => {
      const { activeElement } = document;
      if (activeElement === title || !isHeld(activeElement)) return;
      memory.onBigButton = activeElement.closest('.big-button') !== null;
    };
  }, [step]);
  return heading;
}

const isHeld = (element: Element | null): element is Element =>
  element !== null && element !== document.body;
