import { flesch } from 'flesch';
import { fleschKincaid } from 'flesch-kincaid';
import { syllable } from 'syllable';
import { describe, expect, it } from 'vitest';
import { outcomes } from '../results/facts.ts';
import { pictures } from './pictures.ts';
import type { ForWhom } from './strip.ts';
import { cardNames, stripFor, turnCards } from './strip.ts';
import { easyLanguages, easyWords } from './words.ts';

const whom: ForWhom = {
  ...{ throat: true, selfSwab: true, reward: 'Tea in the blue cup', helps: 'Count to ten.' },
  ...{ stopSigns: 'puts up her hand', staff: ['Pia', 'Jonah'], days: 3 },
};
const sentencesOf = (text: string): string[] => text.split(/(?<=[.!?:])\s+/).filter(Boolean);
const wordsOf = (text: string): string[] => text.match(/[\p{L}\p{N}’']+/gu) ?? [];
const counts = (text: string) => ({
  sentence: 1,
  word: wordsOf(text).length,
  syllable: wordsOf(text).reduce((sum, word) => sum + Math.max(1, syllable(word)), 0),
});

describe('the formula, against its published worked examples', () => {
  // Wikipedia, "Flesch–Kincaid readability tests" (read in a stored copy): "The Australian platypus is seemingly
  // a hybrid of a mammal and reptilian creature" has 24 syllables and 13 words, and is of grade 11.3.
  it('gives the platypus the grade that is published', () => {
    const platypus = { sentence: 1, word: 13, syllable: 24 };
    expect(fleschKincaid(platypus)).toBeCloseTo(11.3, 1);
  });
  // The same page: the highest reading ease there can be is 121.22, of sentences of one word of one syllable.
  it('gives the easiest text there can be its reading ease', () => {
    expect(flesch({ sentence: 1, word: 1, syllable: 1 })).toBeCloseTo(121.22, 2);
  });
  // Worked examples of a published calculator (bit1024.com, "Flesch Reading Ease Score Calculator"): 15 words
  // a sentence of 1.5 syllables give 64.71; 20 words of 1.2 syllables give 85.02.
  it.each([
    [15, 1.5, 64.71],
    [20, 1.2, 85.02],
  ])('%s words a sentence of %s syllables: reading ease %s', (word, each, ease) => {
    expect(flesch({ sentence: 1, word, syllable: word * each })).toBeCloseTo(ease, 1);
  });
  // Texts measured by a word processor, with the reading ease and the grade that it gave (thinktankforum.com,
  // thread 830). Syllables a word follow from the ease, so the grade checks one formula by the other.
  it.each([
    [16.0, 59.5, 8.8],
    [18.7, 47.6, 11.0],
    [16.6, 51.4, 10.1],
    [16.9, 62.9, 9.0],
    [20.6, 43.1, 12.2],
  ])('%s words a sentence, ease %s: grade %s', (word, ease, grade) => {
    const each = (206.835 - 1.015 * word - ease) / 84.6;
    // It averages over sentences in a way of its own: within a third of a grade.
    const ours = fleschKincaid({ sentence: 1, word, syllable: word * each });
    expect(Math.abs(ours - grade)).toBeLessThan(0.34);
  });
  it('counts what stands on the page', () => {
    const cat = 'The cat sat on the mat.';
    expect(counts(cat)).toEqual({ sentence: 1, word: 6, syllable: 6 });
  });
});

/** A catalogue's own name, and what it says to whoever prints it. */
const forStaff = new Set(['code', 'name', 'needsReader']);

/** Every sentence that a catalogue can say to the person. */
const saidIn = (language: (typeof easyLanguages)[number]): string[] => {
  const { cards, results, title, story, resultTitle, when, ...rest } = easyWords(language);
  const others = Object.entries(rest).flatMap(([key, text]) =>
    typeof text === 'string' && !forStaff.has(key) ? [text] : [],
  );
  return [
    ...cardNames.map((card) => cards[card](whom)),
    ...outcomes.flatMap((outcome) => results[outcome]),
    ...[title('Cor'), story('Cor'), resultTitle('Cor'), when('Tuesday'), ...others],
  ].flatMap(sentencesOf);
};
describe('every sentence to the person is of grade 5 or less', () => {
  it.each(saidIn('en-GB'))('%s', (sentence) => {
    expect(fleschKincaid(counts(sentence))).toBeLessThanOrEqual(5);
  });
});
// The grade is made for English; elsewhere only the length of a sentence is measured.
describe.each(easyLanguages)('a sentence has at most 13 words in %s', (language) => {
  it.each(saidIn(language))('%s', (sentence) => {
    expect(wordsOf(sentence).length).toBeLessThanOrEqual(13);
  });
});

describe('the strip', () => {
  it('has a picture of its own for each idea, at least fourteen', () => {
    expect(Object.keys(pictures).length).toBeGreaterThanOrEqual(14);
    const drawn = Object.values(pictures).map((shapes) => JSON.stringify(shapes));
    expect(new Set(drawn).size).toBe(drawn.length);
    expect([...Object.keys(pictures)].sort()).toEqual([...cardNames].sort());
  });
  it('shows no throat where the plan has none, and both sides instead', () => {
    const names = stripFor({ ...whom, throat: false }).map(({ card }) => card);
    expect(names).not.toContain('throat');
    expect(names).toContain('both');
    expect(names).not.toContain('nose');
  });
  it('tells of stop before the swab', () => {
    const names = stripFor(whom).map(({ card }) => card);
    expect(names.indexOf('stop')).toBeLessThan(names.indexOf('throat'));
  });
  it('keeps now and next to the minutes of the swab', () => {
    expect(turnCards(stripFor(whom)).map(({ card }) => card)).toEqual([
      ...['who', 'mask', 'yes', 'tissue', 'self', 'throat', 'nose', 'tube', 'done', 'reward'],
    ]);
  });
});

describe.each(easyLanguages)('the catalogue of %s', (language) => {
  const each = easyWords(language);
  it('says something on every card and for every result', () => {
    for (const card of cardNames) expect(each.cards[card](whom).trim()).not.toBe('');
    for (const outcome of outcomes) expect(each.results[outcome].length).toBeGreaterThan(0);
  });
  it('carries the names, the reward and what helps', () => {
    expect(each.cards.who(whom)).toMatch(/Pia.*Jonah/);
    expect(each.cards.reward(whom)).toContain('Tea in the blue cup.');
  });
  it('waits as long as policy says', () => {
    const said = [1, 2, 3, 14].map((days) => each.cards.wait({ ...whom, days }));
    expect(new Set(said).size).toBe(4);
    if (language === 'en-GB') {
      expect(said[0]).toBe('Now we wait. It can take a day.');
      expect(said[2]).toBe('Now we wait. It can take three days.');
    }
  });
  it('tells nobody what illness they have', () => {
    const all = outcomes.flatMap((outcome) => each.results[outcome]).join(' ');
    expect(all).not.toMatch(/diagnos|covid|flu\b|disease/i);
  });
  it('says so while no native reader has been over it', () => {
    expect(each.checked).toBe(each.needsReader === '');
  });
});
