import { expect, it } from 'vitest';
import { demoPolicy } from '../../../../test/trial/home.ts';
import { allEnglish } from '../../words/en-all.ts';
import { policyGroups } from './policy-rows.ts';

const words = allEnglish({ timeZone: 'Europe/London', person: 'resident' });

/** Every text and number of the policy that stands under `value`, or under a list of actions. */
const sources = (value: unknown): string[] => {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'source' in value ? [String(value.source)] : [];
  return [...own, ...Object.values(value).flatMap(sources)];
};

it('shows the source of every value: a rule nobody can see is no rule', () => {
  // Each source is made its own, so that one shown twice cannot stand in for one left out.
  let count = 0;
  const mark = (value: unknown): unknown => {
    if (typeof value !== 'object' || value === null) return value;
    if (Array.isArray(value)) return value.map(mark);
    return Object.fromEntries(
      Object.entries(value).map(([key, each]) =>
        key === 'source' ? [key, `Source ${(count += 1)}.`] : [key, mark(each)],
      ),
    );
  };
  const whole = demoPolicy((each) => {
    each.group = { titleTold: { value: true, source: 'the group', from: each.issued } };
  });
  const policy = mark(whole) as ReturnType<typeof demoPolicy>;
  const shown = policyGroups(policy, words)
    .flatMap(({ rows }) => rows.map(({ source }) => source ?? ''))
    .join(' ');
  const all = sources(policy);
  expect(all.length).toBeGreaterThan(40);
  for (const source of all) expect(shown).toContain(source);
});

it('says the days on which the laboratory is open by their names', () => {
  const [test] = policyGroups(demoPolicy(), words);
  expect(test?.rows[0]?.value).toContain('Monday, Tuesday, Wednesday');
  expect(test?.rows[0]?.value).not.toContain('Sunday');
});

it('says every value in words', () => {
  const values = policyGroups(demoPolicy(), words).flatMap(({ rows }) =>
    rows.map(({ value }) => value),
  );
  for (const value of values) expect(value).not.toMatch(/object|undefined|NaN|^$/);
});
