import { positiveCount } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import {
  type CodeError,
  ERROR_KINDS,
  type ErrorKind,
  type UndetectedErrorRates,
} from './error-kinds.ts';
import type { CheckScheme } from './scheme.ts';

interface Counter {
  readonly scheme: CheckScheme;
  readonly length: number;
  /** By place from the right: the state after each state and value. */
  readonly steps: readonly Uint16Array[];
  /** How many beginnings of each length end in each state, as shares. */
  readonly heads: readonly Float64Array[];
  /** How many endings from each place and state are accepted, as shares. */
  readonly tails: readonly Float64Array[];
  /** For schemes that are not reversible: endings accepted from both of two states. */
  readonly shared: readonly Float64Array[];
}

const sizeAt = ({ scheme }: Pick<Counter, 'scheme'>, place: number): number =>
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

function bothAccepted(counter: Counter, places: number, a: number, b: number): number {
  if (counter.scheme.reversible)
    return a === b ? ((counter.tails[places] as Float64Array)[a] as number) : 0;
  return (counter.shared[places] as Float64Array)[a * counter.scheme.states + b] as number;
}

const MOST = 64;

function tabulateSteps(scheme: CheckScheme, length: number): readonly Uint16Array[] {
  return Array.from({ length }, (_, place) => {
    const table = new Uint16Array(scheme.states * MOST);
    const size = sizeAt({ scheme }, place);
    for (let state = 0; state < scheme.states; state++) {
      for (let v = 0; v < size; v++) table[state * MOST + v] = scheme.step(state, v, place);
    }
    return table;
  });
}

function run(
  steps: readonly Uint16Array[],
  state: number,
  values: readonly number[],
  place: number,
): number {
  let at = state;
  for (let i = 0; i < values.length; i++) {
    at = (steps[place - i] as Uint16Array)[at * MOST + (values[i] as number)] as number;
  }
  return at;
}

/** Shares of valid codes hit, and of those that still pass, for one error at one position. */
function weigh(
  counter: Counter,
  position: number,
  [before, after]: CodeError,
): readonly [number, number] {
  const { steps, length } = counter;
  const place = length - 1 - position;
  const left = place + 1 - before.length;
  const head = counter.heads[position] as Float64Array;
  const tail = counter.tails[left] as Float64Array;
  let hit = 0;
  let passed = 0;
  for (let state = 0; state < head.length; state++) {
    const share = head[state] as number;
    if (share === 0) continue;
    const right = run(steps, state, before, place);
    hit += share * (tail[right] as number);
    passed += share * bothAccepted(counter, left, right, run(steps, state, after, place));
  }
  return [hit, passed];
}

function rateOf(counter: Counter, { width, errors }: ErrorKind): number {
  const { length } = counter;
  let hit = 0;
  let passed = 0;
  for (let position = 0; position + width <= length; position++) {
    const places = Array.from({ length: width }, (_, i) => length - 1 - position - i);
    // A character moves only between places that may hold it.
    const sizes = places.map((place) => sizeAt(counter, place));
    for (const error of errors(width === 1 ? (sizes[0] as number) : Math.min(...sizes))) {
      const [h, p] = weigh(counter, position, error);
      hit += h;
      passed += p;
    }
  }
  return hit === 0 ? 0 : passed / hit;
}

/**
 * Exact undetected-error rates over all valid codes of a length (check characters included), all
 * positions and all errors of a kind counted alike. Counted by the scheme's states, not by listing
 * codes. A check digit never catches a valid code of another person's tube.
 */
export function undetectedErrorRates(
  scheme: CheckScheme,
  length: number,
): Outcome<UndetectedErrorRates> {
  const refused = positiveCount('length', length);
  if (refused) return refused;
  if (length <= scheme.checkLength)
    return refuse(
      'out-of-range',
      `A ${scheme.name} code has more than ${scheme.checkLength} characters, and the length is ${length}.`,
    );
  if (scheme.states > 700)
    return refuse('too-large', `${scheme.name} has too many states to count exactly here.`);
  const counter = {
    scheme,
    length,
    steps: tabulateSteps(scheme, length),
    heads: countHeads(scheme, length),
    tails: countTails(scheme, length),
    shared: countShared(scheme, length),
  };
  const rate = (kind: keyof UndetectedErrorRates): number => rateOf(counter, ERROR_KINDS[kind]);
  return given({
    substitution: rate('substitution'),
    adjacentTransposition: rate('adjacentTransposition'),
    jumpTransposition: rate('jumpTransposition'),
    twin: rate('twin'),
    jumpTwin: rate('jumpTwin'),
    phonetic: rate('phonetic'),
  });
}
