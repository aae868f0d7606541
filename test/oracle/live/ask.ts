import type { Check } from '../../../src/cli/oracle/check.ts';
import type { Json } from '../../../src/cli/oracle/input.ts';
import { seededChance } from '../../../src/statistics/random/chance.ts';
import type { Draw } from './case.ts';
import { charts } from './charts.ts';
import { diagnostics } from './diagnostics.ts';
import { distributions } from './distributions.ts';
import { epidemics } from './epidemics.ts';
import { freedom } from './freedom.ts';
import { more } from './more.ts';
import { proportions } from './proportions.ts';
import { runR } from './run-r.ts';
import { stock } from './stock.ts';
import { survival } from './survival.ts';

export interface Asked {
  readonly seed: number;
  /** Draws of each kind of question: tables of distributions, and all others. */
  readonly tables: number;
  readonly others: number;
}

/** Draws questions by seed, asks R, and gives checks with R's figures as what is expected. */
export function askR({ seed, tables, others }: Asked): readonly Check[] {
  const draws: readonly (readonly [Draw, number])[] = [
    ...distributions.map((d) => [d, tables] as const),
    ...[...proportions, ...freedom, ...survival, ...epidemics, ...diagnostics, ...stock, ...charts, ...more].map((d) => [d, others] as const),
  ];
  const chance = seededChance(seed);
  const cases = draws.flatMap(([draw, times]) => Array.from({ length: times }, () => draw(chance)));
  const figures = runR(cases);
  return cases.map((c, k) => {
    const answers = figures[k];
    if (typeof answers !== 'object') throw new Error(`R could not answer ${c.fn}: ${String(answers)}`);
    const expected = Object.fromEntries(
      Object.entries(answers).map(([name, values]) => [name, values.length === 1 ? (values[0] ?? null) : values]),
    );
    return {
      id: `R-${seed}-${k}`,
      fn: c.fn,
      input: JSON.parse(JSON.stringify(c.input)) as Json,
      expected,
      tolerance: c.tolerance,
      kind: 'reference-run',
      source: 'R 4.2.2 with survival, epiR, EpiEstim and surveillance from Debian 12, random question',
      ...(c.relative && { note: 'relative tolerance' }),
    };
  });
}
