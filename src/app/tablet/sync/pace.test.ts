import { describe, expect, it } from 'vitest';
import { waitAfter } from './pace.ts';

describe('a tablet that cannot reach its server', () => {
  it('tries again at once, then ever more seldom, at least once a minute', () => {
    const longest = [1, 2, 3, 7, 8, 1000].map((failures) => waitAfter(failures, 1));
    expect(longest).toEqual([1000, 2000, 4000, 60_000, 60_000, 60_000]);
  });

  it('does not come back in step with the others', () => {
    expect([waitAfter(3, 0), waitAfter(3, 0.5), waitAfter(3, 1)]).toEqual([2000, 3000, 4000]);
  });
});
