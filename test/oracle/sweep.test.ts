import { createContext, runInContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { Asked, FoundCost, InUse, Near, OneSolution } from '../../src/cli/oracle/answer.ts';
import type { Adapter } from '../../src/cli/oracle/check.ts';
import { Input, InputError, type Json } from '../../src/cli/oracle/input.ts';
import { readOwnChecks } from '../../src/cli/oracle/read-checks.ts';
import { ADAPTERS } from '../../src/cli/oracle/registry.ts';
import { seededChance, uniform } from '../../src/statistics/random/chance.ts';
import { type Degenerate, degenerate } from './sweep/degenerate.ts';

/** Milliseconds of the processor that one question may take: a busy machine makes nobody slow. */
const MOST = 2000;
/** Milliseconds for one function: those slow by nature are tried with fewer of the inputs. */
const IN_ALL = 2500;

/** Longer than this by the clock, and it is stopped as never ending. */
const NEVER = 15_000;

const spent = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

const own = readOwnChecks();
const byId = new Map(own.map((check) => [check.id, check]));
const context = { lookup: (id: string) => byId.get(id) };
const shapeOf = (input: Json): string => Object.keys(input as object).sort().join();

/** Good inputs of a function under any of its names: one of every set of fields. */
function examplesOf(adapter: Adapter): readonly Json[] {
  const found = new Map<string, Json>();
  for (const { fn, input } of own)
    if (ADAPTERS[fn] === adapter && !found.has(shapeOf(input))) found.set(shapeOf(input), input);
  return [...found.values()];
}

/** Where in an answer there is NaN. */
function nanIn(value: unknown, path = 'the answer'): string | undefined {
  if (typeof value === 'number') return Number.isNaN(value) ? path : undefined;
  if (value instanceof Near) return nanIn(value.value, path);
  if (value instanceof FoundCost) return nanIn(value.cost, path);
  if (value instanceof OneSolution || value instanceof InUse) return nanIn(value.own, path);
  if (typeof value !== 'object' || value === null || value instanceof Asked) return undefined;
  for (const [key, part] of Object.entries(value)) {
    const found = nanIn(part, `${path}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}

const box: { ask: () => void } = { ask: () => undefined };
const outside = createContext(box);

/** What is wrong with how a function meets an input; stops it when it does not end. */
function fault(adapter: Adapter, input: Json, most: number): string | undefined {
  let answer: unknown;
  box.ask = () => {
    answer = adapter(new Input(input), context);
  };
  const begun = spent();
  try {
    runInContext('ask()', outside, { timeout: NEVER });
  } catch (error) {
    if (error instanceof InputError) return undefined;
    return error instanceof Error ? `throws ${error.name}: ${error.message}` : 'throws';
  }
  const took = spent() - begun;
  if (took > most) return `takes ${Math.round(took)} ms`;
  const nan = nanIn(answer);
  return nan && `NaN at ${nan}`;
}

/** So many of the inputs, by seed. */
function some(inputs: readonly Degenerate[], most: number): readonly Degenerate[] {
  const chance = seededChance(inputs.length);
  return inputs.filter(() => uniform(chance) < most / inputs.length);
}

describe('every registered function, given nothing, one, ends, huge, no number, another shape', () => {
  it.each(Object.entries(ADAPTERS))(
    '%s: a figure or a refusal, never NaN, never thrown, within two seconds',
    { timeout: 240_000 },
    (name, adapter) => {
      const examples = examplesOf(adapter);
      expect(examples.length, `${name} has no example: add a check under test/oracle`).toBeGreaterThan(0);
      const faults: string[] = [];
      for (const good of examples) {
        const begun = spent();
        expect(fault(adapter, good, NEVER), 'the good input').toBeUndefined();
        const took = Math.max(1, spent() - begun);
        const tried = some(degenerate(good), IN_ALL / took / examples.length);
        for (const { what, input } of tried) {
          // A question that itself holds many takes as many times as long.
          const found = fault(adapter, input, MOST + 3 * took);
          if (found !== undefined) faults.push(`${what}: ${found}`);
        }
      }
      expect(faults).toEqual([]);
    },
  );
});
