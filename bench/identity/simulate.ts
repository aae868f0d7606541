import { type Chance, seededChance } from '../../src/statistics/random/chance.ts';
import { demoPolicy } from '../../test/trial/home.ts';
import type { Rates } from './assumptions.ts';
import { drawSlips, play } from './flow.ts';
import type { Fate } from './ways.ts';
import { FINE, paper, withCheck } from './ways.ts';

export interface Tally {
  readonly way: string;
  readonly tests: number;
  readonly undetected: number;
  readonly caught: ReadonlyMap<string, number>;
  readonly falseAlarms: number;
  /** Tests with a slip, and a sample of the others, that went through the program's own procedures. */
  readonly played: number;
}

type Way = (chance: Chance, index: number) => { readonly fate: Fate; readonly played: boolean };

function tally(way: string, tests: number, { one, seed }: { one: Way; seed: number }): Tally {
  const chance = seededChance(seed);
  const caught = new Map<string, number>();
  let [undetected, falseAlarms, played] = [0, 0, 0];
  for (let i = 0; i < tests; i += 1) {
    const { fate, played: whole } = one(chance, i);
    if (whole) played += 1;
    if (fate.fate === 'undetected') undetected += 1;
    if (fate.fate === 'caught') caught.set(fate.where, (caught.get(fate.where) ?? 0) + 1);
    if (fate.fate === 'false-alarm') falseAlarms += 1;
  }
  return { way, tests, undetected, caught, falseAlarms, played };
}

/** Of the tests in which nothing goes wrong, one in so many is played through all the same. */
const SAMPLE_CLEAN = 1000;

/**
 * The same people with the same slips in three ways of working. In the program's own flow every test
 * with a slip goes through the real procedures, and a sample of the others: without a slip nothing in
 * them depends on chance.
 */
export function simulate(rates: Rates, { tests, seed }: { tests: number; seed: number }): Tally[] {
  const [kit] = demoPolicy().kits;
  if (kit === undefined) throw new Error('the demo policy has no kit');
  const typed = withCheck({ pattern: kit.codePattern.value, scheme: kit.codeScheme });
  const flow: Way = (chance, i) => {
    const slips = drawSlips(rates, chance);
    if (slips === undefined && i % SAMPLE_CLEAN !== 0) return { fate: FINE, played: false };
    return { fate: play(slips, rates, chance), played: true };
  };
  const plain =
    (way: (rates: Rates, chance: Chance) => Fate): Way =>
    (chance) => ({ fate: way(rates, chance), played: true });
  return [
    tally('Paper, typed later', tests, { one: plain(paper), seed }),
    tally('Typed with a check character', tests, { one: plain(typed), seed }),
    tally('Tallyround', tests, { one: flow, seed }),
  ];
}
