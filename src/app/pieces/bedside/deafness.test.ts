import { describe, expect, it } from 'vitest';
import { hearStep, isDeaf } from './deafness.ts';

describe('a button that is deaf after a change', () => {
  it('does not hear the second half of a double touch', () => {
    const lid = hearStep(undefined, 'lid', 10_000);
    const bag = hearStep(lid, 'bag', 12_000);
    expect(isDeaf(bag, 12_250, 700)).toBe(true);
    expect(isDeaf(bag, 12_699, 700)).toBe(true);
    expect(isDeaf(bag, 12_700, 700)).toBe(false);
  });

  it('is not made deaf again by drawing the same step anew', () => {
    const lid = hearStep(undefined, 'lid', 10_000);
    expect(hearStep(lid, 'lid', 10_600)).toBe(lid);
  });
});
