/**
 * Keys in a blind choice. Digits and arrows only move; Enter or Space picks. A scanner types as a
 * keyboard and ends with Enter: keys that come faster than a hand can press are taken no notice of.
 * Tab and the arrows are always heard: they pick nobody, and a Tab held down must lead out again.
 */
export interface ChoiceKey {
  readonly key: string;
  /** Monotonic milliseconds. */
  readonly at: number;
}

export type ChoiceMove = { readonly to: number } | 'ignore' | 'pass';

/** Faster than this between two keys is a machine, not a hand. */
const machineGapMs = 100;

export interface ChoiceState {
  readonly count: number;
  readonly focused: number;
  readonly lastKeyAt: number | undefined;
}

/** What a key does: move the focus, nothing at all, or its ordinary work. */
export function choiceMove(state: ChoiceState, { key, at }: ChoiceKey): ChoiceMove {
  const { count, focused } = state;
  switch (key) {
    case 'Tab':
      return 'pass';
    case 'ArrowDown':
    case 'ArrowRight':
      return { to: (focused + 1) % count };
    case 'ArrowUp':
    case 'ArrowLeft':
      return { to: (focused + count - 1) % count };
    case 'Home':
      return { to: 0 };
    case 'End':
      return { to: count - 1 };
  }
  if (state.lastKeyAt !== undefined && at - state.lastKeyAt < machineGapMs) return 'ignore';
  const digit = Number(key);
  return /^[1-9]$/.test(key) && digit <= count ? { to: digit - 1 } : 'pass';
}
