import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { ForWhom } from '../../src/care/easy-read/strip.ts';
import { stripFor } from '../../src/care/easy-read/strip.ts';
import { easyLanguages, easyWords } from '../../src/care/easy-read/words.ts';
import { bookletPdf, storyPdf } from '../../src/exchange/documents/booklet.ts';

const folder = mkdtempSync(join(tmpdir(), 'booklet-'));
afterAll(() => rmSync(folder, { recursive: true }));
const made = new Date('2026-11-26T07:00:00Z');
const whom: ForWhom = {
  ...{ throat: true, selfSwab: false, reward: 'A walk to the gate', helps: 'Count aloud with me.' },
  ...{ stopSigns: 'turns to the wall', staff: ['Pia', 'Jonah'] },
};
const run = (tool: string, ...args: string[]) => execFileSync(tool, args, { encoding: 'utf8' });
const pages = (file: string) => Number(/Pages:\s+(\d+)/.exec(run('pdfinfo', file))?.[1]);

// Read back by poppler, which knows nothing of the library that wrote it.
describe.each(easyLanguages)('on paper, in %s', (language) => {
  const words = easyWords(language);
  const cards = stripFor(whom);
  const write = async (name: string, pdf: Promise<Buffer>): Promise<string> => {
    const file = join(folder, `${name}-${language}.pdf`);
    writeFileSync(file, await pdf);
    return file;
  };

  it('the booklet is tagged: a figure with its words and a paragraph on every page', async () => {
    const file = await write('booklet', bookletPdf({ called: 'Cor', whom, words, made }));
    expect(run('pdfinfo', file)).toMatch(/Tagged:\s+yes/);
    expect(pages(file)).toBe(cards.length);
    const tree = run('pdfinfo', '-struct-text', file);
    expect(tree.match(/^\s*Figure/gm)).toHaveLength(cards.length);
    expect(tree.match(/^\s*H1/gm)).toHaveLength(1);
    const text = run('pdftotext', '-layout', file, '-').replaceAll(/\s+/g, ' ');
    for (const { card } of cards) {
      const [first = ''] = words.cards[card](whom).split(' ');
      expect(text).toContain(first);
    }
    expect(text).toContain('Pia');
  });

  it('the story is one page, tagged as a list, and nothing falls off it', async () => {
    const file = await write('story', storyPdf({ called: 'Cor', whom, words, made }));
    expect(run('pdfinfo', file)).toMatch(/Tagged:\s+yes/);
    expect(pages(file)).toBe(1);
    const tree = run('pdfinfo', '-struct', file);
    expect(tree.match(/^\s*LI/gm)).toHaveLength(cards.length);
  });

  it('every page has a picture on it, drawn and not empty', async () => {
    const file = await write('drawn', bookletPdf({ called: 'Cor', whom, words, made }));
    run('pdftoppm', '-r', '20', '-gray', file, join(folder, `page-${language}`));
    const drawn = readdirSync(folder).filter((name) => name.startsWith(`page-${language}`));
    expect(drawn).toHaveLength(cards.length);
  });
});
