import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { FORM_REASONS } from './form-reasons.ts';

test('docs/ledger.md tells every reason for which a form is refused, and no other', () => {
  const page = readFileSync(new URL('../../docs/ledger.md', import.meta.url), 'utf8');
  const told = [...page.matchAll(/^\| `([a-z-]+)` \|/gm)].map(([, reason]) => reason);
  expect(told).toEqual([...FORM_REASONS]);
});
