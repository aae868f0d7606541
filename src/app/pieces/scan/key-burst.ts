/**
 * A barcode scanner that acts as a keyboard types its code much faster than a hand and ends with Enter
 * or Tab. This tells such bursts from typing. Pure: keys come in with the monotonic time they came at.
 */
export interface BurstRules {
  /** Longest gap between two keys of one scan, in ms. Slow wireless scanners need about 50. */
  readonly gapMs: number;
  /** Fewest characters that count as a code. */
  readonly least: number;
  /** A burst that begins this soon after another key is the rest of a broken scan, in ms. */
  readonly breakMs: number;
  /** The same code again within this time is the same scan, in ms. */
  readonly repeatMs: number;
}

export const usualBurstRules: BurstRules = { gapMs: 60, least: 4, breakMs: 350, repeatMs: 1000 };

export interface BurstState {
  readonly typed: string;
  readonly lastAt: number;
  /** The burst began too soon after another key: what ends it may be half a code. */
  readonly broken: boolean;
  readonly lastCode: string;
  readonly lastCodeAt: number;
}

export const quiet: BurstState = {
  typed: '',
  lastAt: -Infinity,
  broken: false,
  lastCode: '',
  lastCodeAt: -Infinity,
};

export interface BurstKey {
  /** As KeyboardEvent.key names it; the group separator of GS1 codes is "\u001d". */
  readonly key: string;
  readonly at: number;
}

/**
 * `first`: may begin a scan, let it through. `within`: part of a burst, keep it from the page.
 * `scan`: a whole code. `repeat`: the same code again at once. `hand`: somebody typing. `broken`: the
 * end of a scan whose beginning came apart; half a code is never taken for a whole one.
 */
export type BurstFinding =
  | { readonly kind: 'first' | 'within' | 'hand' | 'broken' }
  | { readonly kind: 'scan' | 'repeat'; readonly code: string };

export interface BurstStep {
  readonly state: BurstState;
  readonly finding: BurstFinding;
}

/** Takes one key. Keys with no character of their own (Shift) should not be sent here. */
export function burstKey(state: BurstState, { key, at }: BurstKey, rules: BurstRules): BurstStep {
  const fast = state.typed !== '' && at - state.lastAt <= rules.gapMs;
  if (key === 'Enter' || key === 'Tab') return endBurst(state, { fast, at }, rules);
  const typed = fast ? state.typed + key : key;
  const broken = fast ? state.broken : state.typed !== '' && at - state.lastAt <= rules.breakMs;
  return {
    state: { ...state, typed, broken, lastAt: at },
    finding: { kind: fast ? 'within' : 'first' },
  };
}

function endBurst(
  state: BurstState,
  { fast, at }: { fast: boolean; at: number },
  rules: BurstRules,
): BurstStep {
  const cleared = { ...state, typed: '', broken: false };
  const code = state.typed.trim();
  if (!fast || code.length < rules.least) return { state: cleared, finding: { kind: 'hand' } };
  if (state.broken) return { state: cleared, finding: { kind: 'broken' } };
  const same = code === state.lastCode && at - state.lastCodeAt < rules.repeatMs;
  return {
    state: { ...cleared, lastCode: code, lastCodeAt: at },
    finding: { kind: same ? 'repeat' : 'scan', code },
  };
}

/** A burst that stopped without its end: the scanner is set wrong, or the scan was cut short. */
export function isUnfinished(state: BurstState, now: number, rules: BurstRules): boolean {
  return state.typed.length >= Math.max(rules.least, 6) && now - state.lastAt > rules.gapMs;
}
