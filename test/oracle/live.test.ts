import { describe, expect, it } from 'vitest';
import { ADAPTERS } from '../../src/cli/oracle/registry.ts';
import { report } from '../../src/cli/oracle/report.ts';
import { passed, runChecks } from '../../src/cli/oracle/run-checks.ts';
import { seededChance } from '../../src/statistics/random/chance.ts';
import type { Draw, LiveCase } from './live/case.ts';
import { distributions } from './live/distributions.ts';
import { epidemics } from './live/epidemics.ts';
import { freedom } from './live/freedom.ts';
import { proportions } from './live/proportions.ts';
import { missing, runR } from './live/run-r.ts';
import { survival } from './live/survival.ts';

// Another seed asks other questions: SEED=7 npx vitest run test/oracle.
const seed = Number(process.env['SEED'] ?? 20261125);
const draws: readonly (readonly [Draw, number])[] = [
  ...distributions.map((d) => [d, 2] as const),
  ...[...proportions, ...freedom, ...survival, ...epidemics].map((d) => [d, 12] as const),
];

const without = missing();

describe(`the same questions to R, seed ${seed}`, () => {
  if (without !== undefined) {
    it.skip(`skipped: ${without}`, () => undefined);
    return;
  }
  it('R gives the same figures', { timeout: 240_000 }, () => {
    const chance = seededChance(seed);
    const cases: readonly LiveCase[] = draws.flatMap(([draw, times]) => Array.from({ length: times }, () => draw(chance)));
    const figures = runR(cases);
    const checks = cases.map((c, k) => {
      const answers = figures[k];
      if (typeof answers !== 'object') throw new Error(`R could not answer ${c.fn}: ${String(answers)}`);
      const expected = Object.fromEntries(Object.entries(answers).map(([name, values]) => [name, values.length === 1 ? (values[0] ?? null) : values]));
      return {
        id: `live-${k}`,
        fn: c.fn,
        input: JSON.parse(JSON.stringify(c.input)) as null,
        expected,
        tolerance: c.tolerance,
        note: c.relative ? 'relative tolerance' : '',
      };
    });
    const verdicts = runChecks(checks, ADAPTERS);
    expect(verdicts.length).toBeGreaterThan(300);
    expect(verdicts.every(passed), report(verdicts).slice(0, 12).join('\n')).toBe(true);
  });
});
