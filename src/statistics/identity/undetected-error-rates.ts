import { atMost, positiveCount } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { bothAccepted, type CodeCounts, countCodes, STRIDE, sizeAt } from './code-counts.ts';
import {
  type CodeError,
  ERROR_KINDS,
  type ErrorKind,
  type UndetectedErrorRates,
} from './error-kinds.ts';
import type { CheckScheme } from './scheme.ts';

// Longer than any code in use; the count grows with the length.
const LONGEST = 64;

/** Errors as positions in the list of all strings of their width, before and after. */
interface IndexedErrors {
  readonly before: Int32Array;
  readonly after: Int32Array;
}

function indexed(errors: readonly CodeError[], size: number): IndexedErrors {
  const at = (values: readonly number[]): number => values.reduce((sum, v) => sum * size + v, 0);
  return {
    before: Int32Array.from(errors, ([before]) => at(before)),
    after: Int32Array.from(errors, ([, after]) => at(after)),
  };
}

interface Strings {
  readonly width: number;
  readonly size: number;
}

/** The state after every string of so many characters, first character slowest. */
function statesAfter(
  { next }: CodeCounts,
  start: number,
  place: number,
  { width, size }: Strings,
): Int32Array {
  let states = Int32Array.of(start);
  for (let i = 0; i < width; i++) {
    const table = next[place - i] as Uint16Array;
    const longer = new Int32Array(states.length * size);
    for (let s = 0; s < states.length; s++) {
      const row = (states[s] as number) * STRIDE;
      for (let v = 0; v < size; v++) longer[s * size + v] = table[row + v] as number;
    }
    states = longer;
  }
  return states;
}

/** Shares of valid codes hit, and of those that still pass, for one kind of error at one position. */
function weigh(
  counts: CodeCounts,
  position: number,
  errors: IndexedErrors,
  strings: Strings,
): readonly [number, number] {
  const place = counts.length - 1 - position;
  const left = place + 1 - strings.width;
  let [hit, passed] = [0, 0];
  (counts.heads[position] as Float64Array).forEach((share, state) => {
    if (share === 0) return;
    const [h, p] = weighFrom(counts, left, statesAfter(counts, state, place, strings), errors);
    hit += share * h;
    passed += share * p;
  });
  return [hit, passed];
}

function weighFrom(
  counts: CodeCounts,
  left: number,
  ends: Int32Array,
  { before, after }: IndexedErrors,
): readonly [number, number] {
  const tail = counts.tails[left] as Float64Array;
  const { reversible } = counts.scheme;
  let [hit, passed] = [0, 0];
  for (let e = 0; e < before.length; e++) {
    const right = ends[before[e] as number] as number;
    const wrong = ends[after[e] as number] as number;
    const accepted = tail[right] as number;
    hit += accepted;
    if (!reversible) passed += bothAccepted(counts, left, right, wrong);
    else if (right === wrong) passed += accepted;
  }
  return [hit, passed];
}

function rateOf(counts: CodeCounts, { width, errors }: ErrorKind): number {
  const bySize = new Map<number, IndexedErrors>();
  let [hit, passed] = [0, 0];
  for (let position = 0; position + width <= counts.length; position++) {
    const places = Array.from({ length: width }, (_, i) => counts.length - 1 - position - i);
    // A character moves only between places that may both hold it.
    const size = Math.min(...places.map((place) => sizeAt(counts, place)));
    const list = bySize.get(size) ?? indexed(errors(size), size);
    bySize.set(size, list);
    const [h, p] = weigh(counts, position, list, { width, size });
    hit += h;
    passed += p;
  }
  return hit === 0 ? 0 : passed / hit;
}

/**
 * Exact undetected-error rates over all valid codes of a length (check characters included), all
 * positions and all errors of a kind counted alike. Counted by the scheme's states, not by listing
 * codes. Codes of at most 64 characters. A check digit never catches a valid code of another person's tube.
 */
export function undetectedErrorRates(
  scheme: CheckScheme,
  length: number,
): Outcome<UndetectedErrorRates> {
  const refused = positiveCount('length', length);
  if (refused) return refused;
  const tooLong = atMost('length', length, LONGEST);
  if (tooLong) return tooLong;
  if (length <= scheme.checkLength)
    return refuse(
      'out-of-range',
      `A ${scheme.name} code has more than ${scheme.checkLength} characters, and the length is ${length}.`,
    );
  if (scheme.states > 700)
    return refuse('too-large', `${scheme.name} has too many states to count exactly here.`);
  const counts = countCodes(scheme, length);
  const rate = (kind: keyof UndetectedErrorRates): number => rateOf(counts, ERROR_KINDS[kind]);
  return given({
    substitution: rate('substitution'),
    adjacentTransposition: rate('adjacentTransposition'),
    jumpTransposition: rate('jumpTransposition'),
    twin: rate('twin'),
    jumpTwin: rate('jumpTwin'),
    phonetic: rate('phonetic'),
  });
}
