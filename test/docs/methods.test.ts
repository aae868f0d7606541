import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ADAPTERS } from '../../src/cli/oracle/registry.ts';

const page = readFileSync('docs/methods.md', 'utf8');
const paragraphs = page.split(/\n\s*\n/);

/** The names in the brackets at the end of a paragraph. */
const namesIn = (paragraph: string): readonly string[] =>
  [...(/\[(`[^\]]+`)\]\s*$/.exec(paragraph)?.[1] ?? '').matchAll(/`([^`]+)`/g)].map(
    ([, name = '']) => name,
  );

describe('docs/methods.md', () => {
  it.each(Object.keys(ADAPTERS))('has one paragraph for %s', (name) => {
    expect(paragraphs.filter((paragraph) => namesIn(paragraph).includes(name))).toHaveLength(1);
  });

  it('names nothing that cannot be asked for', () => {
    expect(paragraphs.flatMap(namesIn).filter((name) => ADAPTERS[name] === undefined)).toEqual([]);
  });

  it.each(
    paragraphs
      .filter((paragraph) => namesIn(paragraph).length > 0)
      .map((paragraph) => [paragraph.slice(0, 40), paragraph]),
  )('%s… says more than names', (_, paragraph) => {
    expect(paragraph.replace(/\[`[^\]]+`\]/, '').split(/\s+/).length).toBeGreaterThan(30);
  });
});

const filesUnder = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(
      (entry) => entry.isFile() && entry.name.endsWith('.ts') && !entry.name.endsWith('.test.ts'),
    )
    .map((entry) => `${entry.parentPath}/${entry.name}`);
const adapters = filesUnder('src/cli/oracle/adapters')
  .map((file) => readFileSync(file, 'utf8'))
  .join('\n');

/** Exported functions of a text whose first line, up to the body, says that they answer with an Outcome. */
const answering = (text: string): readonly string[] =>
  [...text.matchAll(/^export (?:function |const )(\w+)(?:[^;]|;(?!\n))*?(?:\{\n|=>)/gm)]
    .filter(([head]) => /: Outcome</.test(head))
    .map(([, name = '']) => name);

describe('src/statistics', () => {
  const all = filesUnder('src/statistics')
    .filter((file) => !file.includes('/refusal/') && !file.endsWith('/testing.ts'))
    .flatMap((file) => answering(readFileSync(file, 'utf8')));

  it('has functions that answer or refuse', () => {
    expect(all.length).toBeGreaterThan(80);
  });

  it.each(all)('%s can be asked for through the registry, and so is swept', (name) => {
    expect(adapters).toMatch(new RegExp(`\\b${name}\\b`));
  });
});
