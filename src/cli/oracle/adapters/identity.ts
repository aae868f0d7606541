import { anyDuplicateChance } from '../../../statistics/identity/birthday.ts';
import { checkCharacters } from '../../../statistics/identity/check-characters.ts';
import { consecutiveNearDuplicates } from '../../../statistics/identity/consecutive-near-duplicates.ts';
import {
  damerauLevenshtein,
  levenshtein,
  optimalStringAlignment,
} from '../../../statistics/identity/edit-distance.ts';
import { findNearDuplicates } from '../../../statistics/identity/find-near-duplicates.ts';
import { findScheme } from '../../../statistics/identity/find-scheme.ts';
import { randomNearDuplicates } from '../../../statistics/identity/random-near-duplicates.ts';
import type { CheckScheme } from '../../../statistics/identity/scheme.ts';
import { swapOdds } from '../../../statistics/identity/swap-odds.ts';
import { undetectedErrorRates } from '../../../statistics/identity/undetected-error-rates.ts';
import { answer, valueOrNull } from '../answer.ts';
import type { Adapter, Adapters } from '../check.ts';
import { type Input, InputError } from '../input.ts';

function scheme(name: string): CheckScheme {
  const found = findScheme(name);
  if (!found.ok) throw new InputError(found.detail);
  return found.value;
}

const checkDigit: Adapter = (i) => {
  const s = scheme(i.text('system', 'scheme'));
  return { check: i.texts('payloads', 'payload').map((p) => valueOrNull(checkCharacters(s, p))) };
};

/** The length of a whole code, check characters included. */
function codeLength(i: Input, s: CheckScheme): number {
  if (i.has('length')) return i.number('length');
  if (i.has('payloadLength')) return i.number('payloadLength') + s.checkLength;
  return (s.payloadLength ?? 9) + s.checkLength;
}

const consecutive: Adapter = (i) => {
  const run = { start: i.number('start'), n: i.number('n'), width: i.number('width') };
  const checked = i.has('checkDigit') ? { ...run, scheme: scheme(i.text('checkDigit')) } : run;
  return answer(consecutiveNearDuplicates(checked), (c) => ({
    pairsByHamming: c.pairsByHamming,
    pairsHamming1: c.pairsByHamming[1],
    pairsAdjacentTransposition: c.pairsAdjacentTransposition,
  }));
};

const editDistance: Adapter = (i) => {
  const pairs = i.list('pairs').map(({ raw }): readonly [string, string] => {
    if (!Array.isArray(raw) || raw.length !== 2) throw new InputError('a pair is not two texts');
    return [String(raw[0]), String(raw[1])];
  });
  return {
    levenshtein: pairs.map(([a, b]) => levenshtein(a, b)),
    osa: pairs.map(([a, b]) => optimalStringAlignment(a, b)),
    damerauLevenshtein: pairs.map(([a, b]) => damerauLevenshtein(a, b)),
  };
};

export const identity: Adapters = {
  checkDigit,
  checkDigits: checkDigit,
  undetectedErrorRates: (i) => {
    const s = scheme(i.text('system', 'scheme'));
    return answer(undetectedErrorRates(s, codeLength(i, s)), (rates) => rates);
  },
  randomReplacementUndetected: (i) => ({
    p: i.texts('systems').map((name) => 1 / scheme(name).oneIn),
  }),
  nearDuplicateRandom: (i) =>
    answer(randomNearDuplicates(i.number('n'), i.number('length'), i.number('alphabet')), (r) => ({
      pairProb: r.pairChance,
      expectedPairs: r.expectedPairs,
      probAnyPoisson: r.anyChance,
    })),
  birthdayExact: (i) =>
    answer(anyDuplicateChance(i.number('n'), i.number('space')), (p) => ({ probAnyDuplicate: p })),
  nearDuplicateConsecutive: consecutive,
  editDistance,
  swapOdds: (i) =>
    answer(
      swapOdds({
        swapChance: i.number('swapChance'),
        ifSwapped: i.number('ifSwapped'),
        ifRight: i.number('ifRight'),
      }),
      (odds) => ({ odds }),
    ),
  nearDuplicates: (i) => ({ pairs: findNearDuplicates(i.texts('codes')).map(Object.values) }),
};
