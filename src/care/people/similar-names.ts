import { jaroWinkler } from '@skyra/jaro-winkler';
import { doubleMetaphone } from 'double-metaphone';

/**
 * Two words count as alike from this Jaro–Winkler similarity up (Winkler 1990; 1 is the same). 0.9
 * keeps "Hallam" and "Hallum" (0.93) and lets "Hallam" and "Harlow" (0.70) go. Our own choice.
 */
const ALIKE = 0.9;
/** Sounding the same counts only for words this alike in writing: short names share short keys. */
const ALIKE_IF_SOUNDED = 0.7;

/** A word as compared: no accents, no case, nothing but letters. */
export const bare = (word: string): string =>
  word
    .normalize('NFKD')
    .replaceAll(/[^\p{L}]/gu, '')
    .toLocaleLowerCase('en');

/** Whether two names look alike (Jaro–Winkler) or sound alike (Philips's Double Metaphone, 2000). */
export function soundOrLookAlike(first: string, second: string): boolean {
  const [a, b] = [bare(first), bare(second)];
  if (a === '' || b === '') return false;
  if (a === b) return true;
  const similarity = jaroWinkler(a, b);
  return similarity >= ALIKE || (similarity >= ALIKE_IF_SOUNDED && soundAlike(a, b));
}

function soundAlike(a: string, b: string): boolean {
  const keys = new Set(doubleMetaphone(a).filter((key) => key !== ''));
  return doubleMetaphone(b).some((key) => keys.has(key));
}
