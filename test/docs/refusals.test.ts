import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const root = `${import.meta.dirname}/../..`;
const read = (path: string) => readFileSync(`${root}/${path}`, 'utf8');

const inCode = [...read('src/care/refusal.ts').matchAll(/reason: '([a-z-]+)'/g)].map(
  ([, reason]) => reason,
);
const inPage = [...read('docs/refusals.md').matchAll(/^\| `([a-z-]+)` \|/gm)].map(
  ([, reason]) => reason,
);

it('every reason to refuse stands in the page, and the page names no other', () => {
  expect(inPage.toSorted()).toEqual(inCode.toSorted());
});

it('every reason is said by the app', () => {
  const said = [...read('src/app/desk/say-refusal.ts').matchAll(/case '([a-z-]+)':/g)].map(
    ([, reason]) => reason,
  );
  expect(said.toSorted()).toEqual(inCode.toSorted());
});
