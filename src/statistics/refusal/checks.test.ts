import { describe, expect, it } from 'vitest';
import {
  atMost,
  count,
  each,
  finite,
  firstRefusal,
  nonNegative,
  notEmpty,
  positive,
  positiveCount,
  probability,
  properProbability,
  sameLength,
} from './checks.ts';

const passes = (check: (name: string, value: number) => unknown, values: readonly number[]) =>
  values.filter((x) => check('x', x) === undefined);
const SAMPLE = [Number.NaN, -Infinity, -1, -0.5, 0, 0.5, 1, 1.5, 2, 2 ** 53, Infinity];

describe('checks', () => {
  it.each([
    ['finite', finite, [-1, -0.5, 0, 0.5, 1, 1.5, 2, 2 ** 53]],
    ['count', count, [0, 1, 2]],
    ['positiveCount', positiveCount, [1, 2]],
    ['probability', probability, [0, 0.5, 1]],
    ['properProbability', properProbability, [0.5]],
    ['positive', positive, [0.5, 1, 1.5, 2, 2 ** 53]],
    ['nonNegative', nonNegative, [0, 0.5, 1, 1.5, 2, 2 ** 53]],
  ] as const)('%s lets through what it should and nothing else', (_, check, good) => {
    expect(passes(check, SAMPLE)).toEqual(good);
  });

  it('names the value, the place and what would be right', () => {
    expect(count('people', -1)).toEqual({
      ok: false,
      reason: 'not-a-count',
      detail: 'people must be a whole number, 0 or more, and it is -1.',
    });
    expect(each('times', [1, 2, Number.NaN], nonNegative)?.detail).toBe(
      'times, item 3, must be 0 or more, and it is NaN.',
    );
  });

  it('knows ends, emptiness and unequal lengths', () => {
    expect(atMost('x', 3, 3)).toBeUndefined();
    expect(atMost('x', 4, 3)?.reason).toBe('out-of-range');
    expect(notEmpty('x', [])?.reason).toBe('empty');
    expect(notEmpty('x', [0])).toBeUndefined();
    expect(sameLength('x and y', [1], [1, 2])?.detail).toContain('1 against 2');
    expect(sameLength('x and y', [1], [2])).toBeUndefined();
  });

  it('gives the first refusal of several', () => {
    expect(firstRefusal(undefined, undefined)).toBeUndefined();
    expect(firstRefusal(undefined, count('a', -1), count('b', -1))?.detail).toContain('a must');
  });
});
