import type { TargetedKeyboardEvent } from 'preact';
import { useRef } from 'preact/hooks';
import { choiceMove } from './choice-keys.ts';

export interface ChoiceKeys {
  readonly onKeyDown: (event: TargetedKeyboardEvent<HTMLDivElement>) => void;
}

/** Digits and arrows over the buttons inside the element that hears them. */
export function useChoiceKeys(): ChoiceKeys {
  const lastKeyAt = useRef<number | undefined>(undefined);
  const onKeyDown = (event: TargetedKeyboardEvent<HTMLDivElement>): void => {
    const buttons = [...event.currentTarget.querySelectorAll('button')];
    const focused = buttons.findIndex((button) => button === document.activeElement);
    const at = event.timeStamp;
    const state = {
      count: buttons.length,
      focused: Math.max(focused, 0),
      lastKeyAt: lastKeyAt.current,
    };
    const move =
      event.repeat && event.key === 'Enter' ? 'ignore' : choiceMove(state, { key: event.key, at });
    lastKeyAt.current = at;
    if (move === 'pass') return;
    event.preventDefault();
    if (move !== 'ignore') buttons[move.to]?.focus();
  };
  return { onKeyDown };
}
