import { detectionProbability } from '../../statistics/freedom/detection.ts';
import { homeClearIndependent } from '../../statistics/freedom/home-clear-independent.ts';
import { sampleSize } from '../../statistics/freedom/sample-size.ts';
import { seededChance, uniform } from '../../statistics/random/chance.ts';
import { turnsWith } from '../custody/person-turns.ts';
import type { Home } from '../home.ts';
import type { PersonId } from '../ids.ts';
import { housemates } from '../people/person.ts';
import { policyOn } from '../policy/in-force.ts';
import { swabsOf } from '../rounds/history.ts';
import type { Day } from '../time.ts';
import { dayOf, daysBetween } from '../time.ts';
import { knownOf } from './expected.ts';
import { chanceBefore, wasPositive, yesOrNo } from './meaning.ts';
import { strengthOf } from './swab-strength.ts';

/** Why nothing is known of somebody from a swab. */
export type NotTested = 'not-swabbed' | 'declined' | 'void' | 'waiting' | 'held' | 'away';

export interface OneOfUs {
  readonly person: PersonId;
  readonly before: number;
  /** Chance that a swab as it was taken finds an infection; 0 for nobody tested. */
  readonly sensitivity: number;
  readonly after: number;
  readonly not: NotTested | undefined;
}

export interface HouseChance {
  readonly people: readonly OneOfUs[];
  /** Left out: they are known cases. */
  readonly positives: readonly PersonId[];
  readonly tested: number;
  /** The chance that somebody with it was missed, by formula; the same by simulation, as a check. */
  readonly missed: number;
  readonly simulated: number;
  /** If exactly one had it: the chance that these swabs would have found it (hypergeometric). */
  readonly findOne: number;
  /** How many more to test for the wanted certainty: those most likely first; undefined if all are not enough. */
  readonly more: number | undefined;
  /** How many in all, if exactly one had it (hypergeometric); undefined if all are not enough. */
  readonly inAllForOne: number | undefined;
  readonly certainty: number;
}

/** Swabs older than this say nothing of today (our proposal, no source). */
const WITHIN_DAYS = 7;
const TEN_THOUSAND = 10_000;
const RUNS = 20_000;
const SEED = 20_260_303;

/**
 * The chance that at least one case in the home was missed, given who was tested when, who said no, and
 * which swabs were void. People are taken as independent of each other: in an outbreak they are not, so
 * the figure is too hopeful then, and the screen says so.
 */
export function houseChance(home: Home, today: Day, wanted?: number): HouseChance | undefined {
  const { policy } = policyOn(home, today);
  const { interpretation } = policy;
  if (interpretation === undefined) return undefined;
  const all = housemates(home);
  const positives = all.filter(({ id }) => wasPositive(home, id, today)).map(({ id }) => id);
  const cases = positives.length > 0;
  const { right, wrong } = interpretation.sensitivity.value;
  const best = (right + 1) / (right + wrong + 2);
  const specificityOf = interpretation.specificity.value;
  const specificity = (specificityOf.right + 1) / (specificityOf.right + specificityOf.wrong + 2);
  const raw = all
    .filter(({ id }) => !positives.includes(id))
    .map(({ id, whereabouts }) => {
      const recent = swabsOf(home, id).filter(
        ({ on }) => on <= today && daysBetween(on, today) <= WITHIN_DAYS,
      );
      const negative = recent.findLast((each) => yesOrNo(each) === 'negative');
      const known = knownOf(home, id, { on: today, policy, positiveBefore: false });
      const before = chanceBefore(
        interpretation,
        known === 'afterPositive' ? 'background' : known,
        cases,
      );
      const sensitivity =
        negative === undefined ? 0 : best * strengthOf(home, negative, interpretation).share;
      const not =
        negative === undefined
          ? whyNot(home, { id, today, recent, away: whereabouts.where === 'away' })
          : undefined;
      return { person: id, before, sensitivity, not };
    });
  const found = homeClearIndependent({
    prior: raw.map(({ before }) => before),
    sensitivity: raw.map(({ sensitivity }) => sensitivity),
    specificity,
  });
  if (!found.ok || raw.length === 0) return undefined;
  const people = raw.map((each, i) => ({
    ...each,
    after: found.value.posterior[i] ?? each.before,
  }));
  const certainty = wanted ?? interpretation.wantedCertainty.value / TEN_THOUSAND;
  const tested = people.filter(({ not }) => not === undefined);
  const mean =
    tested.length === 0
      ? best
      : tested.reduce((sum, one) => sum + one.sensitivity, 0) / tested.length;
  const one = detectionProbability({
    population: people.length,
    infected: 1,
    tested: tested.length,
    sensitivity: mean,
  });
  const inAll = sampleSize({
    population: people.length,
    infected: 1,
    sensitivity: mean,
    confidence: certainty,
  });
  return {
    ...{ people, positives, tested: tested.length, certainty },
    missed: 1 - found.value.clear,
    simulated: simulate(people, specificity),
    findOne: one.ok ? one.value : 0,
    more: moreNeeded(people, { best, specificity, certainty }),
    inAllForOne: inAll.ok && inAll.value <= people.length ? inAll.value : undefined,
  };
}

function whyNot(
  home: Home,
  {
    id,
    today,
    recent,
    away,
  }: {
    readonly id: PersonId;
    readonly today: Day;
    readonly recent: ReturnType<typeof swabsOf>;
    readonly away: boolean;
  },
): NotTested {
  const last = recent.at(-1);
  if (last?.outcome.state === 'waiting') return 'waiting';
  if (last?.outcome.state === 'held') return 'held';
  if (last !== undefined) return 'void';
  if (away) return 'away';
  const turns = turnsWith(home, id).filter((turn) => {
    const on = dayOf(turn.openedAt, home.service.zone);
    return on <= today && daysBetween(on, today) <= WITHIN_DAYS;
  });
  return turns.length > 0 ? 'declined' : 'not-swabbed';
}

/** Infections are drawn from the chances before, results from the swabs; rounds with a positive are put back. */
function simulate(people: readonly OneOfUs[], specificity: number): number {
  const chance = seededChance(SEED);
  let kept = 0;
  let missed = 0;
  for (let run = 0; run < RUNS; run += 1) {
    let any = false;
    // Each person by itself is conditioned on a negative, which is the same as whole rounds without one.
    for (const { before, sensitivity } of people) {
      for (;;) {
        const infected = uniform(chance) < before;
        const positive =
          sensitivity > 0 && uniform(chance) < (infected ? sensitivity : 1 - specificity);
        if (positive) continue;
        any ||= infected;
        break;
      }
    }
    kept += 1;
    if (any) missed += 1;
  }
  return missed / kept;
}

/** Tests, one by one, those most likely to have it who were not tested, until the certainty is reached. */
function moreNeeded(
  people: readonly OneOfUs[],
  { best, specificity, certainty }: { best: number; specificity: number; certainty: number },
): number | undefined {
  let clear = people.reduce((product, { after }) => product * (1 - after), 1);
  if (clear >= certainty) return 0;
  const open = people.filter(({ not }) => not !== undefined).sort((a, b) => b.before - a.before);
  for (const [i, { before }] of open.entries()) {
    const missed = before * (1 - best);
    clear = (clear / (1 - before)) * (1 - missed / (missed + (1 - before) * specificity));
    if (clear >= certainty) return i + 1;
  }
  return undefined;
}
