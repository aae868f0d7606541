import { codeFault } from '../../src/care/custody/code-rules.ts';
import type { CodeRule } from '../../src/care/policy/policy.ts';
import { below, type Chance, uniform } from '../../src/statistics/random/chance.ts';
import { kitCode } from '../../test/trial/round.ts';
import type { Rates } from './assumptions.ts';
import { slip } from './slips.ts';

/** What became of one test. `fine`: right person, nobody alarmed. */
export type Fate =
  | { readonly fate: 'fine' | 'undetected' }
  | { readonly fate: 'caught' | 'false-alarm'; readonly where: string };

export const FINE: Fate = { fate: 'fine' };
export const UNDETECTED: Fate = { fate: 'undetected' };
export const caught = (where: string): Fate => ({ fate: 'caught', where });

const happens = (chance: Chance, rate: number): boolean => uniform(chance) < rate;

/** A box: a hundred kits in a row, as makers number them. */
const BOX = 100;

/**
 * The sheet says whose sticker is whose; the codes are typed from it later, and once more when the
 * result comes. `codeOf` numbers the kits; `fault` is what the program says to a code, if anything.
 */
function writtenAndTyped(
  rates: Rates,
  chance: Chance,
  kits: { codeOf: (n: number) => string; fault: (code: string) => string | undefined },
): Fate {
  if (happens(chance, rates.wrongPerson)) return UNDETECTED;
  if (happens(chance, rates.mislabelled)) {
    return happens(chance, rates.crossed)
      ? UNDETECTED
      : caught('laboratory: two tubes with one code, and one code without a result');
  }
  const typings = 1 + Number(happens(chance, rates.typedResult));
  for (let typing = 0; typing < typings; typing += 1) {
    if (!happens(chance, rates.typingSlip)) continue;
    const start = 1_000_000 + below(chance, 8_000_000);
    const mine = below(chance, BOX);
    const typed = slip(kits.codeOf(start + mine), chance);
    const told = kits.fault(typed);
    if (told !== undefined) return caught(told);
    // Seven digits after three letters are the kit's number: is it another kit of this box?
    const other = Number(typed.slice(3, 10)) - start;
    const taken = other >= 0 && other < BOX && other !== mine;
    if (taken && kits.codeOf(start + other) === typed) return UNDETECTED;
    return caught('result: a code that nobody here has');
  }
  return FINE;
}

/** Stickers and a sheet of paper; plain serial numbers typed into a list afterwards. */
export const paper = (rates: Rates, chance: Chance): Fate =>
  writtenAndTyped(rates, chance, {
    codeOf: (n) => `KQT${String(n)}`,
    fault: (code) => (/^KQT[0-9]{7}$/.test(code) ? undefined : 'typing: not a code of this kind'),
  });

/** The same with a check character, looked at as the code is typed. */
export const withCheck =
  (rule: CodeRule) =>
  (rates: Rates, chance: Chance): Fate =>
    writtenAndTyped(rates, chance, {
      codeOf: kitCode,
      fault: (code) => {
        const fault = codeFault(rule, code);
        if (fault === undefined) return undefined;
        return fault === 'malformed'
          ? 'typing: not a code of this kind'
          : 'typing: check character';
      },
    });
