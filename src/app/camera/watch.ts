import type { Symbol } from './reading.ts';

/** What a code is expected to be: a kit's own label, or whatever stands on a box. */
export type Expect = 'label' | 'box';

export interface WatchState {
  /** Codes without a check of their own, and how often in a row they were seen. */
  readonly candidate: string;
  readonly seen: number;
  /** Frames in a row in which a symbol was found and not read. */
  readonly half: number;
  readonly lastCode: string;
  /** Since when nothing has been read; undefined before the first picture. */
  readonly lookingSince: number | undefined;
  /** When the last code was last in view, not when it was taken. */
  readonly lastSeenAt: number;
}

export const watching: WatchState = {
  candidate: '',
  seen: 0,
  half: 0,
  lookingSince: undefined,
  lastCode: '',
  lastSeenAt: -Infinity,
};

/**
 * `code`: take it. `repeat`: the one just taken, still in view. `two`: two different codes in the
 * frame. `half`: part of a code for some time. `slow`: nothing at all for long. `product`: the product's code where a kit's is wanted.
 */
export type WatchFinding =
  | { readonly kind: 'looking' | 'slow' | 'two' | 'half' | 'product' }
  | { readonly kind: 'code' | 'repeat'; readonly code: string };

const watchRules = {
  /** The same code counts again only after it was out of view so long, in ms. */
  awayMs: 1000,
  /** A symbol with no check of its own must read the same in so many frames in a row. */
  framesWithoutCheck: 2,
  /** Frames with half a symbol before that is said. */
  framesOfHalf: 6,
  /** Nothing read for so long, in ms: the label may lie over a fold or be cut off. */
  slowMs: 8000,
} as const;

/** Code 39 and ITF have no compulsory check character: half of one can look like a whole one. */
const WITHOUT_CHECK = /^(?:Code39|ITF)/;
const PRODUCT = /^(?:EAN|UPC)/;

/** Takes what one frame showed. Pure: `at` is monotonic milliseconds. */
export function watch(
  state: WatchState,
  symbols: readonly Symbol[],
  { at, expect }: { readonly at: number; readonly expect: Expect },
): { readonly state: WatchState; readonly finding: WatchFinding } {
  const whole = symbols.filter((symbol) => symbol.whole && symbol.text.trim() !== '');
  const wanted = whole.filter(({ format }) => expect === 'box' || !PRODUCT.test(format));
  const codes = [...new Set(wanted.map(({ text }) => text.trim()))];
  const [code] = codes;
  if (codes.length > 1) return { state: { ...state, seen: 0, half: 0 }, finding: { kind: 'two' } };
  if (code === undefined) return none(state, symbols, { at, product: whole.length > 0 });
  if (code === state.lastCode && at - state.lastSeenAt < watchRules.awayMs) {
    return {
      state: { ...state, lastSeenAt: at, half: 0, lookingSince: undefined },
      finding: { kind: 'repeat', code },
    };
  }
  const weak = wanted.every(({ format }) => WITHOUT_CHECK.test(format));
  const seen = state.candidate === code ? state.seen + 1 : 1;
  if (weak && seen < watchRules.framesWithoutCheck) {
    return { state: { ...state, candidate: code, seen, half: 0 }, finding: { kind: 'looking' } };
  }
  return {
    state: { ...watching, lastCode: code, lastSeenAt: at },
    finding: { kind: 'code', code },
  };
}

function none(
  state: WatchState,
  symbols: readonly Symbol[],
  { at, product }: { at: number; product: boolean },
): { readonly state: WatchState; readonly finding: WatchFinding } {
  const half = symbols.some((symbol) => !symbol.whole) ? state.half + 1 : 0;
  const since = state.lookingSince ?? at;
  const next = { ...state, candidate: '', seen: 0, half, lookingSince: since };
  if (product) return { state: next, finding: { kind: 'product' } };
  if (half >= watchRules.framesOfHalf) return { state: next, finding: { kind: 'half' } };
  const kind = at - since >= watchRules.slowMs ? 'slow' : 'looking';
  return { state: next, finding: { kind } };
}
