import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { STATUS } from './answer.ts';

it('every reason for turning a call away is on its page with its status, and no other', () => {
  const page = readFileSync(new URL('../../docs/server-answers.md', import.meta.url), 'utf8');
  const rows = page.matchAll(/^\| `([a-z-]+)`\s+\| (\d{3})\s+\|/gm);
  const told = Object.fromEntries(
    [...rows].map(([, reason = '', status]) => [reason, Number(status)]),
  );
  expect(told).toEqual(STATUS);
});
