import { expect, it } from 'vitest';
import type { Day } from '../../../care/time.ts';
import { lotState } from './lot-state.ts';

const today = '2026-11-26' as Day;
const lot = { kitKind: 'single-swab', lot: 'WS-1', left: 3, recalled: false };

it.each([
  [{ expires: '2026-11-25' }, 'ended'],
  [{ expires: '2026-11-26' }, 'soon'],
  [{ expires: '2026-12-10' }, 'soon'],
  [{ expires: '2026-12-11' }, 'inDate'],
  [{ expires: '2026-11-25', recalled: true }, 'recalled'],
  [{ expires: '2026-11-25', left: 0 }, 'usedUp'],
])('%j is %s', (of, state) => {
  expect(lotState({ ...lot, ...of, expires: of.expires as Day }, today, 14)).toBe(state);
});
