import { fleschKincaid } from 'flesch-kincaid';
import { syllable } from 'syllable';
import { describe, expect, it } from 'vitest';
import { allEnglish } from './en-all.ts';
import { everyMessage, type Said } from './every-message.ts';
import { samples } from './samples.ts';
import { tradeWords } from './trade-words.ts';

const words = allEnglish({ timeZone: 'Europe/London', person: 'supported' });
const said = everyMessage({ ...words, language: undefined, dates: undefined }, samples);

const sentencesOf = ({ text }: Said): readonly string[] =>
  [...new Intl.Segmenter('en-GB', { granularity: 'sentence' }).segment(text)]
    .map(({ segment }) => segment.trim())
    .filter((segment) => segment !== '');

const wordsOf = (sentence: string): readonly string[] => sentence.match(/[\p{L}\p{N}']+/gu) ?? [];

const easy = new Set(tradeWords.map((word) => word.toLowerCase()));
const syllablesOf = (word: string): number =>
  easy.has(word.toLowerCase()) ? 1 : Math.max(1, syllable(word));

function grade(sentences: readonly string[]): number {
  const all = sentences.flatMap(wordsOf);
  return fleschKincaid({
    sentence: sentences.length,
    word: all.length,
    syllable: all.reduce((sum, word) => sum + syllablesOf(word), 0),
  });
}

it('measures the whole catalogue', () => {
  expect(said.length).toBeGreaterThan(70);
});

it.each(said)('$path is said in sentences under 15 words', (message) => {
  for (const sentence of sentencesOf(message)) {
    expect(wordsOf(sentence).length, sentence).toBeLessThan(15);
  }
});

// Grade level by Kincaid et al. 1975 (Navy research branch report 8-75); US grade 6 is age 11 to 12.
describe('reading age is about 11', () => {
  const real = said.filter(
    (message) => /[.?!:]/.test(message.text) && wordsOf(message.text).length > 3,
  );

  it('for the catalogue as a whole', () => {
    expect(grade(real.flatMap(sentencesOf))).toBeLessThanOrEqual(4);
  });

  it.each(real.filter((message) => wordsOf(message.text).length >= 8))('for $path', (message) => {
    expect(grade(sentencesOf(message)), message.text).toBeLessThanOrEqual(6);
  });

  it('and would not be for the prose of an office', () => {
    const office =
      'The identification procedure must be completed before administering any specimen collection.';
    expect(grade([office])).toBeGreaterThan(12);
  });
});
