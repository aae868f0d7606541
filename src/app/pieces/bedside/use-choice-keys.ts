import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { choiceMove } from './choice-keys.ts';

/**
 * Digits and arrows over the buttons inside the element that gets the ref. A digit is heard wherever the
 * focus is on the page, except while something is typed or a dialog is open.
 */
export function useChoiceKeys(): RefObject<HTMLDivElement> {
  const group = useRef<HTMLDivElement>(null);
  useEffect(() => {
    let lastKeyAt: number | undefined;
    const hear = (event: KeyboardEvent): void => {
      const { current } = group;
      const before = lastKeyAt;
      lastKeyAt = event.timeStamp;
      if (current === null || !(event.target instanceof Element)) return;
      const inside = current.contains(event.target);
      if (!inside && (!/^\d$/.test(event.key) || isBusy(event))) return;
      const buttons = [...current.querySelectorAll('button')];
      const focused = buttons.findIndex((button) => button === document.activeElement);
      const state = {
        count: buttons.length,
        focused: Math.max(focused, 0),
        lastKeyAt: before,
      };
      const move =
        event.repeat && event.key === 'Enter'
          ? 'ignore'
          : choiceMove(state, { key: event.key, at: event.timeStamp });
      if (move === 'pass') return;
      event.preventDefault();
      if (move !== 'ignore') buttons[move.to]?.focus();
    };
    document.addEventListener('keydown', hear);
    return () => document.removeEventListener('keydown', hear);
  }, []);
  return group;
}

/** Where a digit is meant for something else: typed, in a dialog, or for other choices on the page. */
const BUSY = 'input, select, textarea, dialog, .blind-choice, .sign-choice';
const isBusy = ({ target, ctrlKey, altKey, metaKey }: KeyboardEvent): boolean =>
  ctrlKey || altKey || metaKey || (target instanceof Element && target.closest(BUSY) !== null);
