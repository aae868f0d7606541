import { describe, expect, it } from 'vitest';
import { Trial } from '../../../test/trial/home.ts';
import type { StaffId } from '../ids.ts';
import type { Day } from '../time.ts';
import { leftByRight, rankOf } from './rights.ts';

const on = '2026-03-03' as Day;

function house() {
  const trial = new Trial({ on });
  const [maren, pia, wren] = [
    trial.staff('Maren', 'manager'),
    trial.staff('Pia'),
    trial.staff('Wren', 'senior'),
  ];
  const as = (by: StaffId, kind: 'staff.role' | 'staff.left' | 'staff.returned', data: object) => {
    trial.by = by;
    return trial.add(kind, data as never);
  };
  const grantOf = (staff: StaffId) =>
    [...trial.home.known.values()].find(
      (fact) => fact.kind === 'staff.role' && fact.data.staff === staff,
    )!.id;
  return { trial, maren, pia, wren, as, grantOf };
}

describe('a role', () => {
  it('that somebody gives themselves does not count, and takes none away', () => {
    const { trial, pia, as, grantOf } = house();
    as(pia, 'staff.role', { staff: pia, role: 'manager', replaces: [grantOf(pia)] });
    expect(rankOf(trial.home, pia)).toBe('worker');
  });

  it('cannot be taken from somebody by a colleague who could not give it', () => {
    const { trial, maren, pia, as, grantOf } = house();
    as(pia, 'staff.role', { staff: maren, role: 'worker', replaces: [grantOf(maren)] });
    expect(rankOf(trial.home, maren)).toBe('manager');
  });

  it('is changed by a manager, up and down', () => {
    const { trial, maren, pia, as, grantOf } = house();
    const up = as(maren, 'staff.role', { staff: pia, role: 'senior', replaces: [grantOf(pia)] });
    expect(rankOf(trial.home, pia)).toBe('senior');
    as(maren, 'staff.role', { staff: pia, role: 'worker', replaces: [up.id] });
    expect(rankOf(trial.home, pia)).toBe('worker');
  });
});

describe('leaving', () => {
  it('counts when a manager says it, and no longer when a manager takes it back', () => {
    const { trial, maren, wren, as } = house();
    const left = as(maren, 'staff.left', { staff: wren, on });
    expect(leftByRight(trial.home, wren)).toBe(on);
    as(maren, 'staff.returned', { staff: wren, on, replaces: [left.id] });
    expect(leftByRight(trial.home, wren)).toBeUndefined();
  });

  it('said by a colleague shuts nobody out, and lets nobody in again', () => {
    const { trial, maren, pia, wren, as } = house();
    as(pia, 'staff.left', { staff: wren, on });
    expect(leftByRight(trial.home, wren)).toBeUndefined();
    const left = as(maren, 'staff.left', { staff: pia, on });
    as(pia, 'staff.returned', { staff: pia, on, replaces: [left.id] });
    expect(leftByRight(trial.home, pia)).toBe(on);
  });
});
