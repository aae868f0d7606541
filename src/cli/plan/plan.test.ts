import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { drawInput } from '../../../test/trial/plan-instance.ts';

const plan = (input: unknown, ...args: readonly string[]) =>
  spawnSync(process.execPath, ['bin/tallyround.mjs', 'plan', ...args], {
    ...{ encoding: 'utf8', input: typeof input === 'string' ? input : JSON.stringify(input) },
  });
const input = drawInput(2, { people: 4, staff: 4, pairs: 1 });

describe('tallyround plan', { timeout: 120_000 }, () => {
  it('prints the same plan for the same seed, as JSON or as a table', () => {
    const [once, again] = [plan(input, '--seed', '3'), plan(input, '--seed', '3')];
    expect(once.stderr).toBe('');
    expect(once.stdout).toBe(again.stdout);
    expect(plan(input, '--table').stdout).toMatch(/^lane {2}start/);
  });

  it('says by its exit code that somebody is left out, which rules conflict and what would do', () => {
    const people = input.people.map(({ windows: _, ...person }) => person);
    const early = { ...input, people, rules: { ...input.rules, collections: ['08:05'] } };
    const run = plan(early, '--table');
    expect(run.status).toBe(3);
    expect(run.stdout).toContain('The last courier comes at 08:05');
    expect(run.stdout).toContain('Any one of these would be enough:');
  });

  it('says where a bad instance is wrong, with exit code 2', () => {
    const bad = {
      ...input,
      people: [{ ...input.people[0], excluded: ['Zed'], minutes: { mean: -1 } }],
    };
    expect(plan(bad).stderr).toContain('/people/0/minutes/mean: must be above 0');
    const unknown = { ...input, people: [{ ...input.people[0], excluded: ['Zed'] }] };
    const run = plan(unknown);
    expect(run.status).toBe(2);
    expect(run.stderr).toContain('/people/0/excluded/0: there is no member of staff "Zed"');
    expect(plan({ ...input, people: [] }).stderr).toContain('/people: has nobody in it');
    expect(plan(input, '--seed', 'x').stderr).toContain('--seed must be a whole number');
  });
});
