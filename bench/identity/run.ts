// How often a result ends on the wrong person's record, in three ways of working.
//   npx tsx bench/identity/run.ts                1,000,000 tests, printed
//   npx tsx bench/identity/run.ts --write        and written to docs/experiments/identity.md
//   npx tsx bench/identity/run.ts --tests 20000 --seed 7
import { mkdirSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { rates } from './assumptions.ts';
import { page, table } from './report.ts';
import { simulate } from './simulate.ts';

const { values } = parseArgs({
  options: {
    tests: { type: 'string', default: '1000000' },
    seed: { type: 'string', default: '20261125' },
    write: { type: 'boolean', default: false },
  },
});
const tests = Number(values.tests);
const seed = Number(values.seed);
const from = performance.now();
const tallies = simulate(rates, { tests, seed });
console.log(table(tallies));
console.log(`\n${((performance.now() - from) / 1000).toFixed(1)} s for ${String(tests)} tests.`);
if (values.write) {
  const folder = new URL('../../docs/experiments/', import.meta.url);
  mkdirSync(folder, { recursive: true });
  writeFileSync(new URL('identity.md', folder), page(tallies, { tests, seed }));
  console.log('Written to docs/experiments/identity.md');
}
