import { describe, expect, it } from 'vitest';
import { seededChance } from '../random/chance.ts';
import { postTestCorrelatedNegatives } from './post-test-correlated-negatives.ts';
import type { PostTestDrawsQuestion } from './post-test-draws.ts';
import { postTestDraws } from './post-test-draws.ts';
import { postTestUncertain } from './post-test-uncertain.ts';

const question = (more: Partial<PostTestDrawsQuestion> = {}): PostTestDrawsQuestion => ({
  ...{ pre: 0.3, sensitivity: [57, 25], specificity: [96, 6], correlation: 0, draws: 40_000 },
  ...{ tests: [{ share: 1, result: 'negative' }], chance: seededChance(7), ...more },
});
const must = <T>(found: { ok: true; value: T } | { ok: false; detail: string }): T => {
  if (!found.ok) throw new Error(found.detail);
  return found.value;
};

describe('chance of infection after several tests, by draws', () => {
  // Quadrature, another method of ours that R checks (test/oracle).
  it.each(['negative', 'positive'] as const)('one %s test agrees with quadrature', (result) => {
    const drawn = must(postTestDraws(question({ tests: [{ share: 1, result }] })));
    const exact = must(
      postTestUncertain({ pre: 0.3, sensitivity: [57, 25], specificity: [96, 6], result }),
    );
    expect(drawn.mean).toBeCloseTo(exact.mean, 2);
    drawn.quantiles.forEach((each, i) =>
      expect(Math.abs(each - (exact.quantiles[i] ?? 0))).toBeLessThan(0.02),
    );
  });
  it("two negatives agree with Vacek's formula where the tests are known almost exactly", () => {
    const [se, sp, r] = [0.7, 0.95, 0.3];
    const sure = 1e7;
    const drawn = must(
      postTestDraws(
        question({
          sensitivity: [se * sure, (1 - se) * sure],
          specificity: [sp * sure, (1 - sp) * sure],
          tests: [
            { share: 1, result: 'negative' },
            { share: 1, result: 'negative' },
          ],
          ...{ correlation: r, draws: 2000 },
        }),
      ),
    );
    const accuracy = { sensitivity: se, specificity: sp };
    const exact = must(
      postTestCorrelatedNegatives({
        ...{ pre: 0.3, first: accuracy, second: accuracy },
        ...{ covarianceInfected: r * se * (1 - se), covarianceUninfected: 0 },
      }),
    );
    expect(drawn.mean).toBeCloseTo(exact, 4);
  });
  it('gives the same figures for the same seed', () => {
    expect(postTestDraws(question())).toEqual(postTestDraws(question()));
  });
  it('a swab with less of the yield leaves more doubt', () => {
    const at = (share: number) =>
      must(postTestDraws(question({ tests: [{ share, result: 'negative' }] }))).mean;
    expect(at(0.5)).toBeGreaterThan(at(1));
    expect(at(0)).toBeGreaterThan(0.29);
  });
  it('refuses what makes no sense', () => {
    expect(postTestDraws(question({ tests: [] })).ok).toBe(false);
    expect(postTestDraws(question({ draws: 3 })).ok).toBe(false);
    expect(postTestDraws(question({ correlation: 2 })).ok).toBe(false);
  });
});
