import type { CheckScheme } from './scheme.ts';

/** Shares of all codes of a length, by the states of their scheme's machine. */
export interface CodeCounts {
  readonly scheme: CheckScheme;
  readonly length: number;
  /** next[place][state * STRIDE + value], places counted from the right. */
  readonly next: readonly Uint16Array[];
  /** How many beginnings of each length end in each state, as shares. */
  readonly heads: readonly Float64Array[];
  /** How many endings from each place and state are accepted, as shares. */
  readonly tails: readonly Float64Array[];
  /** For schemes that are not reversible: endings accepted from both of two states. */
  readonly shared: readonly Float64Array[];
}

/** How many characters a place, counted from the right, may hold. */
export const sizeAt = ({ scheme }: Pick<CodeCounts, 'scheme'>, place: number): number =>
  place < scheme.checkLength ? scheme.checkAlphabet.length : scheme.alphabet.length;

/** Shares of beginnings that stand in each state before each position. */
function countHeads(scheme: CheckScheme, length: number): readonly Float64Array[] {
  const heads = [new Float64Array(scheme.states)];
  (heads[0] as Float64Array)[scheme.start] = 1;
  for (let i = 0; i < length; i++) {
    const place = length - 1 - i;
    const size = sizeAt({ scheme }, place);
    const next = new Float64Array(scheme.states);
    (heads[i] as Float64Array).forEach((share, state) => {
      if (share === 0) return;
      for (let v = 0; v < size; v++) {
        const to = scheme.step(state, v, place);
        next[to] = (next[to] as number) + share / size;
      }
    });
    heads.push(next);
  }
  return heads;
}

/** Shares of endings that lead to acceptance from each state, indexed by places still to come. */
function countTails(scheme: CheckScheme, length: number): readonly Float64Array[] {
  const tails = [new Float64Array(scheme.states)];
  (tails[0] as Float64Array)[scheme.accept] = 1;
  for (let place = 0; place < length; place++) {
    const size = sizeAt({ scheme }, place);
    const before = tails[place] as Float64Array;
    tails.push(
      before.map((_, state) => {
        let sum = 0;
        for (let v = 0; v < size; v++) sum += before[scheme.step(state, v, place)] as number;
        return sum / size;
      }),
    );
  }
  return tails;
}

/** As countTails, for two states at once. */
function countShared(scheme: CheckScheme, length: number): readonly Float64Array[] {
  if (scheme.reversible) return [];
  const n = scheme.states;
  const shared = [new Float64Array(n * n)];
  (shared[0] as Float64Array)[scheme.accept * n + scheme.accept] = 1;
  for (let place = 0; place < length; place++) {
    const size = sizeAt({ scheme }, place);
    const before = shared[place] as Float64Array;
    shared.push(
      before.map((_, pair) => {
        let sum = 0;
        for (let v = 0; v < size; v++) {
          const a = scheme.step(Math.floor(pair / n), v, place);
          sum += before[a * n + scheme.step(pair % n, v, place)] as number;
        }
        return sum / size;
      }),
    );
  }
  return shared;
}

/** The share of endings accepted from both of two states, for a scheme that is not reversible. */
export const bothAccepted = (
  { shared, scheme }: CodeCounts,
  places: number,
  a: number,
  b: number,
): number => (shared[places] as Float64Array)[a * scheme.states + b] as number;

/** More than any scheme's characters. */
export const STRIDE = 64;

/** The machine's steps as tables: looked up millions of times. */
function tabulate(scheme: CheckScheme, length: number): readonly Uint16Array[] {
  return Array.from({ length }, (_, place) => {
    const table = new Uint16Array(scheme.states * STRIDE);
    const size = sizeAt({ scheme }, place);
    for (let state = 0; state < scheme.states; state++) {
      for (let v = 0; v < size; v++) table[state * STRIDE + v] = scheme.step(state, v, place);
    }
    return table;
  });
}

export function countCodes(scheme: CheckScheme, length: number): CodeCounts {
  return {
    scheme,
    length,
    next: tabulate(scheme, length),
    heads: countHeads(scheme, length),
    tails: countTails(scheme, length),
    shared: countShared(scheme, length),
  };
}
