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
  ...{ stopSigns: 'puts up her hand', staff: ['Pia', 'Jonah'] },
};
const words = easyWords('en-GB');
const sentencesOf = (text: string): string[] => text.split(/(?<=[.!?:])\s+/).filter(Boolean);
const wordsOf = (text: string): string[] => text.match(/[\p{L}\p{N}’']+/gu) ?? [];
const counts = (text: string) => ({
  sentence: 1,
  word: wordsOf(text).length,
  syllable: wordsOf(text).reduce((sum, word) => sum + Math.max(1, syllable(word)), 0),
});

describe('the formula, against its published worked examples', () => {
  // Wikipedia, "Flesch–Kincaid readability tests": "The Australian platypus is seemingly a hybrid of a mammal
  // and reptilian creature" has 24 syllables and 13 words and a reading ease of 37.5 (from memory). The grade by
  // the formula of Kincaid et al. 1975, 0.39 words a sentence + 11.8 syllables a word - 15.59, worked by hand:
  // 0.39 × 13 + 11.8 × 24 / 13 - 15.59 = 11.2646.
  const platypus = { sentence: 1, word: 13, syllable: 24 };
  it('gives the platypus its reading ease and its grade', () => {
    expect(flesch(platypus)).toBeCloseTo(37.5, 0);
    expect(fleschKincaid(platypus)).toBeCloseTo(11.2646, 3);
  });
  // "The cat sat on the mat": 6 words, 6 syllables, reading ease 116.1 (the same page, from memory).
  it('gives the cat on the mat 116 and a grade below zero', () => {
    const cat = 'The cat sat on the mat.';
    expect(counts(cat)).toEqual({ sentence: 1, word: 6, syllable: 6 });
    expect(flesch(counts(cat))).toBeCloseTo(116.145, 3);
    expect(fleschKincaid(counts(cat))).toBeCloseTo(-1.45, 3);
  });
});

const said = [
  ...cardNames.flatMap((card) => sentencesOf(words.cards[card](whom))),
  ...outcomes.flatMap((outcome) => words.results[outcome].flatMap(sentencesOf)),
  ...[words.now, words.next, words.last, words.onward, words.stopped, words.readAloud],
  ...sentencesOf(words.story('Cor')),
];
describe('every sentence to the person is of grade 5 or less', () => {
  it.each(said)('%s', (sentence) => {
    expect(fleschKincaid(counts(sentence))).toBeLessThanOrEqual(5);
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
  it('tells nobody what illness they have', () => {
    const all = outcomes.flatMap((outcome) => each.results[outcome]).join(' ');
    expect(all).not.toMatch(/diagnos|covid|flu\b|disease/i);
  });
  it('says so while no native reader has been over it', () => {
    expect(each.checked).toBe(each.needsReader === '');
  });
});
