import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { failed, type Limit, type Tries, takenBack, waitFor } from './tries.ts';

const limit: Limit = { free: 3, firstDelay: 30_000, longestDelay: 240_000, forgetAfter: 3_600_000 };
const failTimes = (count: number, at: number): Tries | undefined => {
  let tries: Tries | undefined;
  for (let i = 0; i < count; i++) tries = failed(tries, limit, at);
  return tries;
};

describe('wrong PINs', () => {
  it('cost nothing while they are few', () => {
    expect(waitFor(undefined, limit, 0)).toBe(0);
    expect(waitFor(failTimes(2, 1000), limit, 1000)).toBe(0);
  });

  it('then make the next try wait, twice as long each time, up to a bound', () => {
    const waits = [3, 4, 5, 6, 7, 60].map((count) => waitFor(failTimes(count, 0), limit, 0));
    expect(waits).toEqual([30_000, 60_000, 120_000, 240_000, 240_000, 240_000]);
  });

  it('are forgotten after a quiet time', () => {
    expect(waitFor(failTimes(9, 0), limit, 3_600_000)).toBe(0);
    expect(failed(failTimes(9, 0), limit, 3_600_000).failures).toBe(1);
  });

  it('wait no longer than the delay when the clock is set back, and no shorter', () => {
    expect(waitFor(failTimes(3, 1_000_000), limit, 5)).toBe(30_000);
  });

  it('counted ahead of a check are taken back one by one', () => {
    expect(takenBack(failTimes(1, 0))).toBeUndefined();
    expect(takenBack(failTimes(4, 9))).toEqual({ failures: 3, last: 9 });
  });

  it('let at most free + log2 + one a longest delay through, however fast they are tried', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 60_000 }), { maxLength: 400 }), (gaps) => {
        let now = 0;
        let tried = 0;
        let tries: Tries | undefined;
        for (const gap of gaps) {
          now += gap;
          if (waitFor(tries, limit, now) > 0) continue;
          tried += 1;
          tries = failed(tries, limit, now);
        }
        expect(tried).toBeLessThanOrEqual(3 + 4 + Math.ceil(now / limit.longestDelay));
      }),
    );
  });
});

describe('slips at a place where many sign in', () => {
  const place: Limit = { ...limit, forgetAfter: 86_400_000, forgetOneEvery: 3_600_000 };

  it('fade one by one', () => {
    const five = failTimes(5, 0);
    expect(waitFor(five, place, 0)).toBe(120_000);
    expect(waitFor(five, place, 2 * 3_600_000)).toBe(0);
    expect(failed(five, place, 2 * 3_600_000).failures).toBe(4);
    expect(failed(five, place, 6 * 3_600_000).failures).toBe(1);
  });

  it('do not fade while they go on', () => {
    let tries: Tries | undefined;
    for (let i = 0; i < 10; i += 1) tries = failed(tries, place, i * 3_599_000);
    expect(tries?.failures).toBe(10);
  });
});
