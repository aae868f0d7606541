import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { ForWhom } from '../../src/care/easy-read/strip.ts';
import { stripFor } from '../../src/care/easy-read/strip.ts';
import { easyLanguages, easyWords } from '../../src/care/easy-read/words.ts';
import { outcomes } from '../../src/care/results/facts.ts';
import { bookletPdf, storyPdf } from '../../src/exchange/documents/booklet.ts';
import { diskFonts } from '../../src/exchange/documents/disk-fonts.ts';
import { letterPdf } from '../../src/exchange/documents/letter.ts';
import { unprintable } from '../../src/exchange/documents/unprintable.ts';
import { have, inFolder } from './tools.ts';

const folder = mkdtempSync(join(tmpdir(), 'booklet-'));
afterAll(() => rmSync(folder, { recursive: true }));
const made = new Date('2026-11-26T07:00:00Z');
const fonts = diskFonts();
const whom: ForWhom = {
  ...{ throat: true, selfSwab: false, reward: 'A walk to the gate', helps: 'Count aloud with me.' },
  ...{ stopSigns: 'turns to the wall', staff: ['Pia', 'Łukasz'], days: 3 },
};
const run = (tool: string, ...args: string[]) => execFileSync(tool, args, { encoding: 'utf8' });
const pages = (file: string) => Number(/Pages:\s+(\d+)/.exec(run('pdfinfo', file))?.[1]);
const flat = (text: string) => text.replaceAll(/\s+/g, ' ');
const textOf = (file: string) => flat(run('pdftotext', file, '-'));
const save = async (name: string, pdf: Promise<Uint8Array>): Promise<string> => {
  const file = join(folder, `${name}.pdf`);
  writeFileSync(file, await pdf);
  return file;
};

/** How many dark dots stand in a strip of a page, as poppler draws it at 25 dots to the inch. */
function dark(file: string, page: number, [top, bottom]: readonly [number, number]): number {
  return inFolder((where) => {
    const only = ['-f', String(page), '-l', String(page), '-singlefile'];
    run('pdftoppm', '-r', '25.4', '-gray', ...only, file, join(where, 'page'));
    const pgm = readFileSync(join(where, 'page.pgm'));
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 40).toString('latin1'));
    const [start, width] = [head?.[0].length ?? 0, Number(head?.[1])];
    return pgm.subarray(start + top * width, start + bottom * width).filter((dot) => dot < 128)
      .length;
  });
}

// Read back by poppler, which knows nothing of the library that wrote it. One dot is one millimetre.
describe.skipIf(!have('pdftoppm', 'pdfinfo', 'pdftotext')).each(easyLanguages)(
  'on paper, in %s',
  (language) => {
    const words = easyWords(language);
    const cards = stripFor(whom);
    const given = { called: 'Cor', whom, words, made, fonts };
    const booklet = save(`booklet-${language}`, bookletPdf(given));

    it('the booklet is tagged: a figure with its words and a paragraph on every page', async () => {
      const file = await booklet;
      expect(run('pdfinfo', file)).toMatch(/Tagged:\s+yes/);
      expect(pages(file)).toBe(cards.length);
      const tree = run('pdfinfo', '-struct-text', file);
      expect(tree.match(/^\s*Figure/gm)).toHaveLength(cards.length);
      expect(tree.match(/^\s*H1/gm)).toHaveLength(1);
    });

    it('is read out in the order of the pages, every sentence whole', async () => {
      const text = textOf(await booklet);
      const found = cards.map(({ card }) => text.indexOf(flat(words.cards[card](whom))));
      expect(found).not.toContain(-1);
      expect([...found].sort((a, b) => a - b)).toEqual(found);
      expect(text).toContain('Łukasz');
    });

    it('shows a picture, and under it the words, on every page', async () => {
      const file = await booklet;
      for (let page = 1; page <= cards.length; page += 1) {
        expect(dark(file, page, [40, 175]), `picture ${page}`).toBeGreaterThan(200);
        expect(dark(file, page, [185, 273]), `words ${page}`).toBeGreaterThan(30);
      }
    });

    it('the story is one page, tagged as a list, and nothing falls off it', async () => {
      const long = 'She likes to hear the kettle song, and to hold her left hand, and to sit.';
      const most = { ...whom, helps: long, selfSwab: true };
      const file = await save(`story-${language}`, storyPdf({ ...given, whom: most }));
      expect(run('pdfinfo', file)).toMatch(/Tagged:\s+yes/);
      expect(pages(file)).toBe(1);
      const tree = run('pdfinfo', '-struct', file);
      const all = stripFor(most);
      expect(tree.match(/^\s*LI/gm)).toHaveLength(all.length);
      const text = textOf(file);
      for (const { card } of all) expect(text).toContain(flat(words.cards[card](most)));
      expect(dark(file, 1, [0, 8])).toBe(0);
      expect(dark(file, 1, [291, 297])).toBe(0);
    });

    it.each(outcomes)('a letter to the person: %s', async (outcome) => {
      const sentences = [...words.results[outcome], words.questions];
      const letter = {
        ...{ title: words.resultTitle('Cor'), service: 'Windlestraw House', madeLine: 'Made.' },
        ...{ foot: 'No diagnosis.', language, picture: 'done' as const, sentences, lines: [] },
      };
      const file = await save(`letter-${language}`, letterPdf({ ...letter, made, fonts }));
      expect(pages(file)).toBe(1);
      const tree = run('pdfinfo', '-struct', file);
      expect(tree.match(/^\s*(H1|Figure|P)\b/gm)).toHaveLength(sentences.length + 5);
      const text = textOf(file);
      for (const sentence of sentences) expect(text).toContain(sentence);
      expect(dark(file, 1, [105, 260])).toBeGreaterThan(100);
    });
  },
);

describe.skipIf(!have('pdfinfo', 'pdftotext'))('a letter to the doctor', () => {
  it('is a table with a heading in each row, and long values go on below', async () => {
    const lines = [
      { label: 'Born', value: '14 March 1951' },
      { label: 'Laboratory', value: 'A laboratory with a name that goes on '.repeat(4).trim() },
      { label: 'Code', value: 'TR3K7QX2M9PA' },
    ];
    const letter = {
      ...{ title: 'About a test: Corwen Vale', service: 'Windlestraw House', madeLine: 'Made.' },
      ...{ foot: 'No diagnosis.', language: 'en-GB', sentences: ['A result.'], lines },
    };
    const file = await save('doctor', letterPdf({ ...letter, made, fonts }));
    const tree = run('pdfinfo', '-struct-text', file);
    expect(tree.match(/^\s*TR/gm)).toHaveLength(3);
    expect(tree.match(/^\s*TH/gm)).toHaveLength(3);
    const text = textOf(file);
    for (const { label, value } of lines) expect(text).toContain(`${label} ${value}`);
  });
});

describe('letters that the typefaces lack', () => {
  it('are told, each once; the rest of Europe’s are there', () => {
    expect(unprintable(fonts, 'Łukasz Dvořák, Siân, Zoë')).toEqual([]);
    expect(unprintable(fonts, 'Ŵyn 王 王')).toEqual(['Ŵ', '王']);
  });
});
