import type { Outcome } from '../../care/results/facts.ts';
import { outcomes } from '../../care/results/facts.ts';
import tests from './tests.json' with { type: 'json' };
import words from './words.json' with { type: 'json' };

/** What a service says that a word means, by the word as `plainWord` writes it. */
export type OwnWords = ReadonlyMap<string, Outcome>;

/** Lower case, one space between words, no sign at the end: "Not  Detected." is "not detected". */
export const plainWord = (text: string): string =>
  text
    .normalize('NFKC')
    .toLocaleLowerCase('en')
    .replaceAll(/[\s_-]+/gu, ' ')
    .replaceAll(/[.!:;,]+$/gu, '')
    .trim();

const isOutcome = (text: string): text is Outcome => (outcomes as readonly string[]).includes(text);

/** What is here from memory alone is written down to be checked, and used by nobody. */
const sourced = <T extends { readonly source: string }>(all: readonly T[]): T[] =>
  all.filter(({ source }) => source !== 'memory');

const known: ReadonlyMap<string, Outcome> = new Map(
  sourced(words.words).flatMap(({ says, means }) =>
    isOutcome(means) ? [[plainWord(says), means] as const] : [],
  ),
);

/** What a word or code of a result means: as the service said, then as words.json says, else undefined. */
export function outcomeMeant(said: string, own?: OwnWords): Outcome | undefined {
  const word = plainWord(said);
  return own?.get(word) ?? known.get(word);
}

const finds: ReadonlyMap<string, string> = new Map(
  sourced(tests.tests).map((test) => [test.code, test.finds]),
);

/** What a LOINC code tests for, if it is one of the respiratory tests known here. */
export const testMeant = (code: string): string | undefined => finds.get(code);

/**
 * One outcome for a tube that was tested for several things: positive if any is; otherwise the worst
 * known. One that is not known leaves the whole not known, unless something was found.
 */
export function together(parts: readonly (Outcome | undefined)[]): Outcome | undefined {
  if (parts.length === 0) return undefined;
  for (const one of ['positive', undefined, 'inconclusive', 'void', 'withdrawn'] as const)
    if (parts.includes(one)) return one;
  return 'negative';
}
