import { postTestDraws } from '../../statistics/diagnostics/post-test-draws.ts';
import { seededChance } from '../../statistics/random/chance.ts';
import type { Home } from '../home.ts';
import { housemates } from '../people/person.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Swab } from '../rounds/history.ts';
import { swabsOf } from '../rounds/history.ts';
import type { Day } from '../time.ts';
import { daysBetween } from '../time.ts';
import { knownOf } from './expected.ts';
import type { Interpretation, Strength } from './swab-strength.ts';
import { strengthOf } from './swab-strength.ts';

/** What a result says of the person, as a chance with its spread. Never a diagnosis. */
export interface Meaning {
  readonly result: 'positive' | 'negative';
  /** What was known beforehand, and the chance policy gives for it. */
  readonly known: 'background' | 'contact' | 'symptoms';
  readonly cases: boolean;
  readonly usualBefore: number;
  readonly before: number;
  readonly after: number;
  readonly lower: number;
  readonly upper: number;
  readonly strength: Strength;
  /** Swabs of the last days that were counted together, this one included. */
  readonly counted: number;
}

/**
 * Negatives so near to each other speak of the same infection (our proposal, no source): less than a
 * week, so that a weekly round is not counted twice. A positive stands by itself.
 */
const TOGETHER_DAYS = 5;
/** A case in the home counts for so long (as outbreaks are looked at; common practice). */
const CASE_DAYS = 14;
const DRAWS = 4000;
/** The same everywhere, so that every tablet shows the same figures. */
const SEED = 20_260_303;
const TEN_THOUSAND = 10_000;

/** What one person's result means; undefined where policy says nothing of it, or the result is no yes or no. */
export function meaningOf(home: Home, swab: Swab, moved?: number): Meaning | undefined {
  const { policy } = policyOn(home, swab.on);
  const { interpretation } = policy;
  const result = yesOrNo(swab);
  if (interpretation === undefined || result === undefined) return undefined;
  const { person } = swab.turn;
  const known = knownOf(home, person, { on: swab.on, policy, positiveBefore: false });
  const what = known === 'afterPositive' ? 'background' : known;
  const cases = caseNear(home, swab);
  const usualBefore = chanceBefore(interpretation, what, cases);
  const before = moved ?? usualBefore;
  const together = swabsOf(home, person).filter(
    (each) =>
      (each.test.id === swab.test.id || (result === 'negative' && yesOrNo(each) === 'negative')) &&
      each.on <= swab.on &&
      daysBetween(each.on, swab.on) <= TOGETHER_DAYS &&
      (each.test.taken?.at ?? '') <= (swab.test.taken?.at ?? ''),
  );
  const { sensitivity, specificity, repeatCorrelation } = interpretation;
  const found = postTestDraws({
    pre: before,
    // A uniform prior on each: one more of both than the study counted.
    sensitivity: [sensitivity.value.right + 1, sensitivity.value.wrong + 1],
    specificity: [specificity.value.right + 1, specificity.value.wrong + 1],
    tests: together.map((each) => ({
      share: strengthOf(home, each, interpretation).share,
      result: yesOrNo(each) ?? 'negative',
    })),
    correlation: repeatCorrelation.value / TEN_THOUSAND,
    draws: DRAWS,
    chance: seededChance(SEED),
  });
  if (!found.ok) return undefined;
  const [lower = 0, , upper = 1] = found.value.quantiles;
  return {
    ...{ result, known: what, cases, usualBefore, before, after: found.value.mean, lower, upper },
    strength: strengthOf(home, swab, interpretation),
    counted: together.length,
  };
}

export function yesOrNo({ outcome }: Swab): 'positive' | 'negative' | undefined {
  if (outcome.state !== 'known') return undefined;
  const says = outcome.result.data.outcome;
  return says === 'positive' || says === 'negative' ? says : undefined;
}

export function chanceBefore(
  { before }: Interpretation,
  known: Meaning['known'],
  cases: boolean,
): number {
  return before.value[cases ? (`${known}WithCases` as const) : known] / TEN_THOUSAND;
}

/** Whether anybody else here had a positive in the two weeks before a swab. */
const caseNear = (home: Home, swab: Swab): boolean =>
  housemates(home).some(({ id }) => id !== swab.turn.person && wasPositive(home, id, swab.on));

export const wasPositive = (home: Home, person: Swab['turn']['person'], on: Day): boolean =>
  swabsOf(home, person).some(
    (each) =>
      yesOrNo(each) === 'positive' && each.on <= on && daysBetween(each.on, on) <= CASE_DAYS,
  );
