import { describe, expect, it } from 'vitest';
import { readOwnChecks } from './read-checks.ts';
import { ADAPTERS } from './registry.ts';
import { report } from './report.ts';
import { passed, runChecks } from './run-checks.ts';

const checks = readOwnChecks();

describe('outside check values', () => {
  it('are all there', () => {
    expect(checks.length).toBeGreaterThan(250);
    expect(new Set(checks.map((c) => c.id)).size).toBe(checks.length);
  });

  it.each(checks.map((check) => [check.id, check.fn, check] as const))(
    '%s: %s gives the published or reference figures',
    (_, __, check) => {
      const [verdict] = runChecks([check], ADAPTERS, checks);
      expect(verdict && passed(verdict), report(verdict ? [verdict] : []).join('\n')).toBe(true);
    },
  );
});
