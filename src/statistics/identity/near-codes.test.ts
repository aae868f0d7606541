import fc from 'fast-check';
import { expect, it } from 'vitest';
import { damerauLevenshtein } from './edit-distance.ts';
import { shapeOf } from './look-alikes.ts';
import { isNearCode, nearIndex } from './near-codes.ts';

it('finds one edit: a sign wrong, missing, too many, or two swapped', () => {
  for (const other of ['KX4T7QPN', 'KX4T7QP', 'KX4T7QPMM', 'XK4T7QPM']) {
    expect(isNearCode('KX4T7QPM', other), other).toBe(true);
  }
  expect(isNearCode('KX4T7QPM', 'KX4T7QPM')).toBe(false);
  expect(isNearCode('KX4T7QPM', 'KX5T7QPN')).toBe(false);
});

it('finds signs that look alike, however many', () => {
  expect(isNearCode('O0I1S5B8', '0O1l55BB')).toBe(true);
  expect(isNearCode('8005', 'BOOS')).toBe(true);
});

const signs = fc.constantFrom(...Array.from('01OIl5S8BAK7'));
const codes = fc.array(fc.string({ unit: signs, minLength: 2, maxLength: 6 }), { maxLength: 40 });

it('the index finds exactly what comparing with every code finds, by the full distance', () => {
  fc.assert(
    fc.property(codes, fc.string({ unit: signs, minLength: 2, maxLength: 6 }), (live, code) => {
      const slow = [...new Set(live)].filter(
        (other) =>
          other !== code &&
          (damerauLevenshtein(code, other) === 1 || shapeOf(code) === shapeOf(other)),
      );
      expect(nearIndex(live).near(code)).toEqual(slow.sort());
    }),
    { numRuns: 300 },
  );
});
