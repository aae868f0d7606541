import { parseArgs } from 'node:util';
import { type Fault, planted, sound, soundCare } from './faults.ts';
import { keptSeeds } from './kept-seeds.ts';
import { type Outcome, simulate } from './simulate.ts';

const { values } = parseArgs({
  options: {
    seeds: { type: 'string', default: '200' },
    steps: { type: 'string', default: '500' },
    seed: { type: 'string' },
    fault: { type: 'string' },
    planted: { type: 'boolean', default: false },
    all: { type: 'boolean', default: false },
    care: { type: 'boolean', default: false },
  },
});
/** Failures shown in full. */
const SHOWN = 5;
const steps = Number(values.steps);
const count = Number(values.seeds);
const faultNamed = (name: string) => planted.find((fault) => fault.name === name);

process.exitCode = values.planted ? await runPlanted() : await runSound();

/** Every seed must pass; those that once failed come first. The last line is the count. */
async function runSound(): Promise<number> {
  const plain = values.care ? soundCare : sound;
  const fault = values.fault === undefined ? plain : faultNamed(values.fault);
  if (!fault) return unknownFault();
  const seeds =
    values.seed === undefined
      ? [...(fault === sound ? keptSeeds : []), ...range(1, count)]
      : [Number(values.seed)];
  const began = performance.now();
  let facts = 0;
  let failed = 0;
  for (const seed of seeds) {
    const outcome = await simulate(seed, steps, fault);
    facts += outcome.facts;
    if (outcome.failed) failed += 1;
    if (outcome.failed && failed <= SHOWN) show(seed, fault, outcome.failed);
  }
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  console.log(`${seeds.length} seeds of ${steps} steps, ${facts} facts, ${seconds} s`);
  return sum(seeds.length - failed, failed);
}

function show(seed: number, fault: Fault, failed: NonNullable<Outcome['failed']>): void {
  const { step, invariant, detail } = failed;
  const planting =
    fault === sound ? '' : fault === soundCare ? ' --care' : ` --fault '${fault.name}'`;
  console.log(`seed ${seed}, step ${step}: invariant ${invariant}: ${detail}`);
  console.log(`  npx tsx test/simulation/run.ts --seed ${seed} --steps ${steps}${planting}`);
}

function sum(passed: number, failed: number): number {
  console.log(`${passed} passed, ${failed} failed`);
  return failed === 0 ? 0 : 1;
}

/** Every planted fault must be caught. `--all` counts on through every seed. */
async function runPlanted(): Promise<number> {
  let missed = 0;
  for (const fault of planted) {
    let caught = 0;
    let tried = 0;
    const invariants = new Set<string>();
    for (const seed of range(1, count)) {
      tried += 1;
      const { failed } = await simulate(seed, steps, fault);
      if (!failed) continue;
      caught += 1;
      invariants.add(failed.invariant);
      if (!values.all) break;
    }
    if (caught === 0) missed += 1;
    const by = caught === 0 ? 'NOT CAUGHT' : `by ${[...invariants].sort().join(', ')}`;
    console.log(
      `${fault.name.padEnd(36)} ${String(caught).padStart(3)} of ${String(tried).padStart(3)} seeds  ${by}`,
    );
  }
  return sum(planted.length - missed, missed);
}

function unknownFault(): number {
  console.log(`no such fault; there are: ${planted.map(({ name }) => `'${name}'`).join(', ')}`);
  return 2;
}

function range(from: number, length: number): readonly number[] {
  return Array.from({ length }, (_, i) => from + i);
}
