import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../../test/trial/home.ts';
import { kitCode, plan, swab } from '../../../test/trial/round.ts';
import { settleFinding } from '../../procedures/settle-finding.ts';
import { chanceOfResult, swapOdds } from '../../statistics/identity/swap-odds.ts';
import type { PersonId, StaffId } from '../ids.ts';
import type { Code } from '../kind.ts';
import { findings } from '../quality/findings.ts';
import { misfitOf } from '../quality/of-fit.ts';
import type { Day } from '../time.ts';
import type { Outcome } from './facts.ts';
import { outcomeOf } from './outcome.ts';

let kit = 0;

function home(policy = demoPolicy()) {
  const trial = new Trial({ policy });
  for (const name of ['Pia', 'Jonah']) trial.staff(name);
  trial.staff('Sorrel', 'senior');
  const people = ['Corwen', 'Oriel', 'Tamsin'].map((name, i) =>
    trial.person(name, `195${String(i)}-03-03`),
  ) as [PersonId, PersonId, PersonId];
  return { trial, people };
}

/** One round on a day: everybody swabbed in turn, the results as given. */
function round(trial: Trial, day: string, results: readonly (readonly [PersonId, Outcome])[]) {
  trial.at('09:00', day);
  const id = plan(
    trial,
    results.map(([person]) => person),
  );
  const tests = results.map(([person]) => {
    const code = kitCode((kit += 1)) as Code;
    return { code, test: swab(trial, id, person, code) };
  });
  tests.forEach(({ code, test }, i) => {
    const outcome = results[i]?.[1] ?? 'negative';
    const rest = { how: 'scanned', matched: 'born', reported: day as Day } as const;
    trial.add('result.recorded', { code, test, outcome, ...rest });
  });
  return tests.map(({ test }) => test);
}

const doubts = (trial: Trial) =>
  findings(trial.home).filter((found) => found.kind === 'result-does-not-fit');

describe('a result that contradicts the history', () => {
  it('a positive soon after a positive is held, not dropped, until a senior decides', () => {
    const { trial, people } = home();
    const [corwen] = people;
    round(trial, '2026-03-03', [[corwen, 'positive']]);
    const [test] = round(trial, '2026-03-20', [[corwen, 'positive']]);
    if (test === undefined) throw new Error('no test');
    const [found] = doubts(trial);
    expect(found).toMatchObject({ key: `positive-again/${test}`, tests: [test] });
    expect(outcomeOf(trial.home, test)).toMatchObject({ state: 'held' });
    trial.by = 'sorrel' as StaffId;
    trial.must(
      settleFinding(
        trial.home,
        {
          ...{ finding: found?.id ?? '', seen: found?.members ?? [], verdict: 'explained' },
          reason: 'The laboratory looked again. Still shedding.',
        },
        trial.doing,
      ),
    );
    expect(outcomeOf(trial.home, test)).toMatchObject({ state: 'known' });
  });

  it('a positive long after a positive is no contradiction', () => {
    const { trial, people } = home();
    const [corwen] = people;
    round(trial, '2026-03-03', [[corwen, 'positive']]);
    round(trial, '2026-07-20', [[corwen, 'positive']]);
    expect(doubts(trial)).toEqual([]);
  });

  it('a negative between two positives is challenged when the second one comes', () => {
    const { trial, people } = home();
    const [corwen] = people;
    round(trial, '2026-03-03', [[corwen, 'positive']]);
    const [middle] = round(trial, '2026-03-06', [[corwen, 'negative']]);
    expect(doubts(trial)).toEqual([]);
    round(trial, '2026-03-09', [[corwen, 'positive']]);
    expect(doubts(trial).map((found) => found.key)).toContain(`negative-between/${String(middle)}`);
  });

  it("two neighbours' results that would fit each other better are both challenged", () => {
    const { trial, people } = home();
    const [corwen, oriel, tamsin] = people;
    trial.add(
      'symptoms.noticed',
      { person: corwen, on: '2026-03-02' as Day, signs: ['fever'] },
      { note: '' },
    );
    const tests = round(trial, '2026-03-03', [
      [corwen, 'negative'],
      [oriel, 'positive'],
      [tamsin, 'negative'],
    ]);
    const [found] = doubts(trial);
    expect(doubts(trial)).toHaveLength(1);
    expect(found?.tests).toEqual(tests.slice(0, 2).toSorted());
    // By hand from the policy: se 0.8, sp 0.995, symptoms 0.3, background 0.01, swaps 0.0005.
    const positive = (pre: number) => pre * 0.8 + (1 - pre) * 0.005;
    const right = positive(0.01) * (1 - positive(0.3));
    const swapped = positive(0.3) * (1 - positive(0.01));
    const odds = found && misfitOf(trial.home, found)?.odds;
    expect(odds).toBeCloseTo((0.0005 / 0.9995) * (swapped / right), 12);
  });

  it('neighbours whose results fit are left alone', () => {
    const { trial, people } = home();
    const [corwen, oriel] = people;
    round(trial, '2026-03-03', [
      [corwen, 'negative'],
      [oriel, 'positive'],
    ]);
    expect(doubts(trial)).toEqual([]);
  });

  it('is challenged only where the policy says how to weigh it', () => {
    const { trial, people } = home(demoPolicy((policy) => delete policy.fit));
    const [corwen] = people;
    round(trial, '2026-03-03', [[corwen, 'positive']]);
    round(trial, '2026-03-09', [[corwen, 'positive']]);
    expect(doubts(trial)).toEqual([]);
  });
});

describe('the odds of a swap', () => {
  it("follow Bayes' rule, worked by hand", () => {
    expect(swapOdds({ swapChance: 0.2, ifSwapped: 0.5, ifRight: 0.25 })).toEqual({
      ok: true,
      value: 0.5,
    });
    expect(chanceOfResult(0.5, { sensitivity: 0.8, specificity: 0.9 }, 'positive')).toBeCloseTo(
      0.45,
    );
  });

  it('are refused where there is nothing to weigh', () => {
    expect(swapOdds({ swapChance: 1, ifSwapped: 0.5, ifRight: 0.5 }).ok).toBe(false);
    expect(swapOdds({ swapChance: 0.5, ifSwapped: 2, ifRight: 0.5 }).ok).toBe(false);
  });
});
