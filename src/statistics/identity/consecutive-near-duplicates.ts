import { atMost, count, firstRefusal, positiveCount } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { checkCharacters } from './check-characters.ts';
import type { CheckScheme } from './scheme.ts';

export interface ConsecutiveCodes {
  readonly start: number;
  readonly n: number;
  /** Digits, filled with zeros on the left; a check character comes on top. */
  readonly width: number;
  readonly scheme?: CheckScheme;
}

export interface ConsecutiveNearDuplicates {
  /** Item d counts the pairs that differ in exactly d places. */
  readonly pairsByHamming: readonly number[];
  /** Pairs that one swap of neighbours turns into each other. */
  readonly pairsAdjacentTransposition: number;
}

function makeCodes({ start, n, width, scheme }: ConsecutiveCodes): Outcome<readonly string[]> {
  const codes: string[] = [];
  for (let i = 0; i < n; i++) {
    const payload = String(start + i).padStart(width, '0');
    if (payload.length > width)
      return refuse('out-of-range', `${payload} has more than ${width} digits.`);
    if (!scheme) {
      codes.push(payload);
      continue;
    }
    const check = checkCharacters(scheme, payload);
    if (check.ok) codes.push(payload + check.value);
    else if (check.reason !== 'undefined') return check;
  }
  return given(codes);
}

function places(a: string, b: string): readonly number[] {
  const different: number[] = [];
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) different.push(i);
  return different;
}

function isSwap(a: string, b: string, [i, j]: readonly number[]): boolean {
  return i !== undefined && j === i + 1 && a[i] === b[j] && a[j] === b[i];
}

/**
 * How near to each other the codes of one run of serial numbers lie; at most 5,000 codes, of at most
 * 16 digits (more no serial number held as a number has).
 */
export function consecutiveNearDuplicates(
  run: ConsecutiveCodes,
): Outcome<ConsecutiveNearDuplicates> {
  const refused = firstRefusal(
    count('start', run.start),
    count('n', run.n),
    atMost('n', run.n, 5000),
    positiveCount('width', run.width),
    atMost('width', run.width, 16),
  );
  if (refused) return refused;
  const made = makeCodes(run);
  if (!made.ok) return made;
  const codes = made.value;
  const pairsByHamming = new Array<number>((codes[0]?.length ?? run.width) + 1).fill(0);
  let swaps = 0;
  for (let i = 0; i < codes.length; i++) {
    for (let j = i + 1; j < codes.length; j++) {
      const [a, b] = [codes[i] as string, codes[j] as string];
      const different = places(a, b);
      pairsByHamming[different.length] = (pairsByHamming[different.length] as number) + 1;
      if (different.length === 2 && isSwap(a, b, different)) swaps++;
    }
  }
  return given({ pairsByHamming, pairsAdjacentTransposition: swaps });
}
