import { readdirSync, readFileSync } from 'node:fs';
import Color from 'colorjs.io';
import postcss from 'postcss';
import { describe, expect, it } from 'vitest';
import { manifestColours } from './manifest-colours.ts';
import { pairs } from './pairs.ts';

const folder = import.meta.dirname;
type Theme = 'day' | 'night';

function readTokens(): ReadonlyMap<string, Readonly<Record<Theme, string>>> {
  const found = new Map<string, Readonly<Record<Theme, string>>>();
  postcss.parse(readFileSync(`${folder}/tokens.css`, 'utf8')).walkDecls(/^--/, (decl) => {
    const match = /^light-dark\((#[0-9a-f]+), (#[0-9a-f]+)\)$/.exec(decl.value);
    if (match === null) throw new Error(`${decl.prop} is not light-dark(#day, #night)`);
    found.set(decl.prop.slice(2), { day: match[1]!, night: match[2]! });
  });
  return found;
}

const tokens = readTokens();
const colour = (name: string, theme: Theme): Color => {
  const token = tokens.get(name);
  if (token === undefined) throw new Error(`no token ${name}`);
  return new Color(token[theme]);
};

// Thresholds: WCAG 2.2, success criteria 1.4.3 and 1.4.11. Ratio as computed by colorjs.io.
describe.each(['day', 'night'] as const)('by %s', (theme) => {
  it.each(pairs)('$front on $on reaches $atLeast to 1', ({ front, on, atLeast }) => {
    const ratio = colour(on, theme).contrast(colour(front, theme), 'WCAG21');
    expect(ratio).toBeGreaterThanOrEqual(atLeast);
  });

  it('names in a pair every token that carries meaning', () => {
    // In a picture the lines carry the meaning; these only fill them.
    const fills = ['picture-hair', 'picture-calm', 'picture-warm', 'picture-stop'];
    const decorative = ['rule', 'wire', 'veil', ...fills];
    const paired = new Set(pairs.flatMap((pair) => [pair.on, pair.front]));
    const left = [...tokens.keys()].filter(
      (name) => !paired.has(name) && !decorative.includes(name),
    );
    expect(left).toEqual([]);
  });
});

// No standard says how dim is dim: these two limits are our own (common practice, no source).
it('keeps every night ground nearly dark and no night text near white', () => {
  for (const { on, front } of pairs) {
    expect(colour(on, 'night').luminance, on).toBeLessThan(0.065);
    expect(colour(front, 'night').luminance, front).toBeLessThan(0.72);
  }
});

it('lets no other file name a colour', () => {
  const app = `${folder}/..`;
  const files = readdirSync(app, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(css|tsx?)$/.test(path))
    .filter((path) => !/tokens\.css$|manifest-colours|\.test\.ts$/.test(path))
    .map((path) => `${app}/${path}`);
  const naming = files.filter((path) =>
    /#[0-9a-f]{3,8}\b(?!["']?\))|\brgba?\(|\bhsla?\(/i.test(readFileSync(path, 'utf8')),
  );
  expect(files.length).toBeGreaterThan(5);
  expect(naming).toEqual([]);
});

it('gives the installed app the same ground as its pages', () => {
  expect(manifestColours.background).toBe(tokens.get('paper')?.day);
  expect(manifestColours.theme).toBe(tokens.get('paper')?.day);
  expect(manifestColours.themeNight).toBe(tokens.get('paper')?.night);
});
