import { chanceOfResult, swapOdds } from '../../statistics/identity/swap-odds.ts';
import { turnsWith } from '../custody/person-turns.ts';
import type { Test } from '../custody/test.ts';
import { isLive, testOf } from '../custody/test.ts';
import type { Turn } from '../custody/turn.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import type { PersonId, RoundId } from '../ids.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Policy } from '../policy/policy.ts';
import { roundOf } from '../rounds/round.ts';
import type { Day, Instant } from '../time.ts';
import { dayOf, daysBetween } from '../time.ts';
import type { Known } from './expected.ts';
import { knownOf } from './expected.ts';
import type { Recorded } from './recorded.ts';
import { resultsFor } from './recorded.ts';

export const misfitKinds = ['positive-again', 'negative-between', 'crossed'] as const;
export type MisfitKind = (typeof misfitKinds)[number];

/** A swab with a yes or a no for a result, as a step in somebody's history. */
export interface Weighed {
  readonly test: Test;
  readonly person: PersonId;
  readonly at: Instant;
  readonly on: Day;
  readonly result: Recorded & { readonly data: { readonly outcome: 'positive' | 'negative' } };
}

/** A result that contradicts what is known, with what it contradicts and the odds of a swap. */
export interface Misfit {
  readonly kind: MisfitKind;
  /** The results in doubt: held until somebody decides. */
  readonly doubtful: readonly Weighed[];
  /** Earlier and later results that they contradict. */
  readonly against: readonly Weighed[];
  /** Swap : chance. Below 1 chance is the likelier. */
  readonly odds: number;
}

/** Everything in a person's history that has a clear result, oldest first. */
function historyOf(home: Home, person: PersonId): Weighed[] {
  const history: Weighed[] = [];
  for (const turn of turnsWith(home, person)) {
    for (const id of turn.tests) {
      const weighed = weigh(home, turn, testOf(home, id));
      if (weighed !== undefined) history.push(weighed);
    }
  }
  return history.sort((a, b) => (a.at < b.at ? -1 : 1));
}

function weigh(home: Home, turn: Turn, test: Test): Weighed | undefined {
  const { taken } = test;
  if (taken === undefined || !isLive(test)) return undefined;
  const result = resultsFor(home, test.id).at(-1);
  const outcome = result?.data.outcome;
  if (outcome !== 'positive' && outcome !== 'negative') return undefined;
  const on = dayOf(taken.at, home.service.zone);
  return { test, person: turn.person, at: taken.at, on, result: result as Weighed['result'] };
}

const isPositive = (each: Weighed | undefined): boolean => each?.result.data.outcome === 'positive';

interface Question {
  readonly home: Home;
  readonly policy: Policy;
  readonly fit: NonNullable<Policy['fit']>;
}

/** The policy of the day weighs it; where it says nothing of this, nothing is challenged. */
function questionOn(home: Home, on: Day): Question | undefined {
  const { policy } = policyOn(home, on);
  return policy.fit && { home, policy, fit: policy.fit };
}

/** The last positive before a swab, near enough that another one is not expected. */
const positiveBefore = (history: readonly Weighed[], at: Weighed, days: number) =>
  history.findLast(
    (each) => each.at < at.at && isPositive(each) && daysBetween(each.on, at.on) <= days,
  );

/** What contradicts itself within one person's history. */
export function misfitsInHistory(home: Home, person: PersonId): Misfit[] {
  const history = historyOf(home, person);
  return history.flatMap((here, i): Misfit[] => {
    const ask = questionOn(home, here.on);
    if (ask === undefined) return [];
    const window = ask.policy.due.notAfterPositiveDays.value;
    const before = positiveBefore(history, here, window);
    if (isPositive(here)) {
      return before === undefined
        ? []
        : [
            {
              kind: 'positive-again',
              doubtful: [here],
              against: [before],
              odds: odds(ask, here, before),
            },
          ];
    }
    const [last, next] = [history[i - 1], history[i + 1]];
    const between =
      last !== undefined && next !== undefined && isPositive(last) && isPositive(next);
    if (!between || daysBetween(last.on, next.on) > ask.fit.negativeBetweenDays.value) return [];
    const both = { kind: 'negative-between', doubtful: [here], against: [last, next] } as const;
    return [{ ...both, odds: odds(ask, here, last) }];
  });
}

/** One tube against that of somebody unknown, of whom nothing is expected. */
function odds(ask: Question, here: Weighed, before: Weighed | undefined): number {
  const own = knownAt(ask, here, before);
  return oddsOf(ask, {
    ifRight: chance(ask, own, here),
    ifSwapped: chance(ask, 'background', here),
  });
}

const knownAt = ({ home, policy }: Question, here: Weighed, before: Weighed | undefined): Known =>
  knownOf(home, here.person, { on: here.on, policy, positiveBefore: before !== undefined });

/** Policy's chances are whole numbers in 10,000. */
const TEN_THOUSAND = 10_000;

const chance = ({ fit }: Question, known: Known, { result }: Weighed): number =>
  chanceOfResult(
    fit.chancePositive[known].value / TEN_THOUSAND,
    {
      sensitivity: fit.sensitivity.value / TEN_THOUSAND,
      specificity: fit.specificity.value / TEN_THOUSAND,
    },
    result.data.outcome,
  );

function oddsOf({ fit }: Question, chances: { ifRight: number; ifSwapped: number }): number {
  const found = swapOdds({ swapChance: fit.swapChance.value / TEN_THOUSAND, ...chances });
  if (!found.ok) throw new Error(found.detail);
  return found.value;
}

/**
 * Two tubes taken one after the other by the same pair of hands, one positive and one not, where each
 * result would fit the other person better: the one who had reason to be positive is negative.
 */
export function misfitsInRound(home: Home, id: RoundId): Misfit[] {
  const byTablet = new Map<string, Weighed[]>();
  for (const turnId of roundOf(home, id)?.turns ?? []) {
    const turn = turnOf(home, turnId);
    if (turn === undefined) continue;
    const mine = turn.tests.flatMap((test) => weigh(home, turn, testOf(home, test)) ?? []);
    byTablet.set(turn.device, [...(byTablet.get(turn.device) ?? []), ...mine]);
  }
  return [...byTablet.values()].flatMap((swabs) => {
    const line = swabs.sort((a, b) => (a.at < b.at ? -1 : 1));
    return line.flatMap((here, i) => crossed(home, line[i - 1], here) ?? []);
  });
}

function crossed(home: Home, first: Weighed | undefined, second: Weighed): Misfit | undefined {
  if (first === undefined || first.person === second.person) return undefined;
  if (isPositive(first) === isPositive(second)) return undefined;
  const ask = questionOn(home, second.on);
  if (ask === undefined) return undefined;
  const [positive, negative] = isPositive(first) ? [first, second] : [second, first];
  const ofPositive = expectation(ask, positive);
  const ofNegative = expectation(ask, negative);
  const expected = ofNegative === 'symptoms' || ofNegative === 'afterPositive';
  if (ofPositive !== 'background' || !expected) return undefined;
  const ifRight = chance(ask, ofPositive, positive) * chance(ask, ofNegative, negative);
  const ifSwapped = chance(ask, ofNegative, positive) * chance(ask, ofPositive, negative);
  return {
    kind: 'crossed',
    doubtful: [first, second],
    against: [],
    odds: oddsOf(ask, { ifRight, ifSwapped }),
  };
}

function expectation(ask: Question, here: Weighed): Known {
  const window = ask.policy.due.notAfterPositiveDays.value;
  return knownAt(ask, here, positiveBefore(historyOf(ask.home, here.person), here, window));
}
