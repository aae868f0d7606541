import { describe, expect, it } from 'vitest';
import { Idle } from './idle.ts';

const clocks = () => {
  const at = { mono: 1000, wall: 5000 };
  return { at, clocks: { monotonic: () => at.mono, now: () => at.wall } };
};

describe('a tablet nobody touches', () => {
  it('is idle from the last touch on', () => {
    const { at, clocks: both } = clocks();
    const idle = new Idle(both);
    at.mono += 400;
    at.wall += 400;
    expect(idle.ms).toBe(400);
    idle.touched();
    expect(idle.ms).toBe(0);
  });

  it('is idle while its lid is closed, though the one clock stands still', () => {
    const { at, clocks: both } = clocks();
    const idle = new Idle(both);
    at.wall += 3_600_000;
    expect(idle.ms).toBe(3_600_000);
  });

  it('is not awake for longer when somebody sets its clock back', () => {
    const { at, clocks: both } = clocks();
    const idle = new Idle(both);
    at.mono += 180_000;
    at.wall -= 86_400_000;
    expect(idle.ms).toBe(180_000);
  });
});
