import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { got } from '../../statistics/testing.ts';
import { definition } from './turnaround.ts';

const arrivalOf = (input: object): unknown =>
  (got(definition.run(v.parse(definition.input, input))) as { readonly arrival: unknown }).arrival;

describe('tallyround turnaround', () => {
  it('does not know of one older than anything watched, and is never sure of nought', () => {
    const not = { probability: null, lower: null, upper: null, beyondData: true };
    expect(arrivalOf({ hours: [5], outcome: ['out'], ages: [4, 5, 6], by: 10 })).toEqual([
      { age: 4, by: 10, probability: 0, lower: 0, upper: null, beyondData: true },
      { age: 5, by: 10, ...not },
      { age: 6, by: 10, ...not },
    ]);
  });

  it('gives a floor without an upper limit beyond the longest wait', () => {
    // By hand, Kaplan & Meier 1958: half of those out at 0 came by 10, and none was watched past 20.
    expect(
      arrivalOf({ hours: [10, 20], outcome: ['result', 'out'], ages: [0], by: 30 }),
    ).toMatchObject([{ probability: 0.5, upper: null, beyondData: true }]);
    expect(
      arrivalOf({ hours: [10, 20], outcome: ['result', 'out'], ages: [0], by: 20 }),
    ).toMatchObject([{ probability: 0.5, beyondData: false }]);
  });
});
