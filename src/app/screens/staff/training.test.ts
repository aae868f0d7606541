import { expect, it } from 'vitest';
import type { Member } from '../../../care/staff/member.ts';
import type { Day } from '../../../care/time.ts';
import { trainingsOf } from './training.ts';

const today = '2026-11-26' as Day;

it.each([
  [undefined, 'none'],
  ['2026-11-25', 'ended'],
  ['2026-11-26', 'soon'],
  ['2026-12-26', 'soon'],
  ['2026-12-27', 'in-date'],
] as const)('training until %s is %s', (until, state) => {
  const competence = until === undefined ? {} : { swab: until as Day };
  expect(trainingsOf({ competence } as Member, today)[0]?.state).toBe(state);
});
