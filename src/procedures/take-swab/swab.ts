import type { FactOf, NewFact } from '../../care/catalogue.ts';
import type { Site } from '../../care/custody/facts.ts';
import type { Test } from '../../care/custody/test.ts';
import type { Turn } from '../../care/custody/turn.ts';
import type { Home } from '../../care/home.ts';
import { policyOn } from '../../care/policy/in-force.ts';
import { allow, refuse } from '../../care/refusal.ts';
import { planOf, sitesOn } from '../../care/support/plan.ts';
import { elapsed, MINUTE } from '../../care/time.ts';
import type { Doing, Outcome } from '../doing.ts';
import { today } from '../doing.ts';
import type { TurnTouch } from './touch.ts';

export interface Way {
  readonly sites: readonly Site[];
  readonly taker: 'staff' | 'person';
}

/** Both nostrils where there is no throat; throat, then one nostril, otherwise. */
export const sitesIn = (where: 'throat-and-nose' | 'nose-only'): readonly Site[] =>
  where === 'nose-only' ? ['nostril-1', 'nostril-2'] : ['throat', 'nostril-1'];

/**
 * The sites of this swab, in order: throat then one nostril, or both nostrils where the throat is
 * not possible (common practice, no source). What is recorded in the end is what the dials ran.
 */
export function wayOf(home: Home, turn: Turn, test: Test, doing: Doing): Way {
  const plan = planOf(home, turn.person);
  const chosen = test.way?.data;
  const sites = chosen?.sites ?? sitesOn(plan, today(home, doing));
  return {
    sites: sitesIn(sites),
    taker: chosen?.taker ?? 'staff',
  };
}

type ChooseWay = Extract<TurnTouch, { do: 'choose-way' }>;

/** At Ready only: no throat today, or the person takes it themselves. */
export function chooseWay(
  home: Home,
  turn: Turn,
  test: Test,
  { touch, doing }: With<ChooseWay>,
): Outcome {
  const now = wayOf(home, turn, test, doing);
  const nose = touch.sites === 'nose-only' || !now.sites.includes('throat');
  return allow([
    {
      kind: 'way.chosen',
      data: {
        turn: turn.id,
        test: test.id,
        sites: nose ? 'nose-only' : 'throat-and-nose',
        taker: touch.self === true ? 'person' : now.taker,
      },
    },
  ]);
}

interface With<T extends TurnTouch> {
  readonly touch: T;
  readonly doing: Doing;
}

/** T5. Too long since they were identified: that is asked again, and nothing has begun. */
export function startSite(home: Home, turn: Turn, test: Test, doing: Doing): Outcome {
  const holds = policyOn(home, today(home, doing)).policy.technique.identityHoldsMinutes.value;
  if (elapsed(turn.identity?.at ?? turn.openedAt, doing.now) > holds * MINUTE) {
    return allow([{ kind: 'identity.lapsed', data: { turn: turn.id } }]);
  }
  const [site] = wayOf(home, turn, test, doing).sites;
  if (site === undefined) return refuse({ reason: 'not-this-step', step: 'ready' });
  return allow([started(turn, test, site)]);
}

const started = (turn: Turn, test: Test, site: Site): NewFact => ({
  kind: 'site.started',
  data: { turn: turn.id, test: test.id, site },
});

const ended = (test: Test, running: FactOf<'site.started'>, ms: number): NewFact => ({
  kind: 'site.ended',
  data: { turn: running.data.turn, test: test.id, site: running.data.site, ms: whole(ms) },
});

/** Milliseconds of the dial's own clock; a longer wait than the record holds counts as its most. */
const whole = (ms: number) => Math.min(600_000, Math.max(0, Math.round(ms)));

/** T6. Straight on to the second site: one tap ends the first and starts the next. */
export function nextSite(
  home: Home,
  turn: Turn,
  test: Test,
  { touch, doing }: With<Extract<TurnTouch, { do: 'next-site' }>>,
): Outcome {
  const { running } = test;
  const next = running && siteAfter(wayOf(home, turn, test, doing), running.data.site);
  if (running === undefined || next === undefined) {
    return refuse({ reason: 'not-this-step', step: 'swab' });
  }
  return allow([ended(test, running, touch.ms), started(turn, test, next)]);
}

const siteAfter = (way: Way, site: Site): Site | undefined =>
  way.sites[way.sites.indexOf(site) + 1];

/** T7. Out. The record holds the sites whose dials ran; a missing side is done, or said why. */
export function out(
  home: Home,
  turn: Turn,
  test: Test,
  { touch, doing }: With<Extract<TurnTouch, { do: 'out' }>>,
): Outcome {
  const { running } = test;
  if (running === undefined) return refuse({ reason: 'not-this-step', step: 'swab' });
  const way = wayOf(home, turn, test, doing);
  if (siteAfter(way, running.data.site) !== undefined && touch.short === undefined) {
    return refuse({ reason: 'second-side-missing' });
  }
  const sites = [
    ...test.ended.map(({ data }) => ({ site: data.site, ms: data.ms })),
    { site: running.data.site, ms: whole(touch.ms) },
  ];
  const short = touch.short === undefined ? {} : { short: touch.short };
  return allow([
    ended(test, running, touch.ms),
    {
      kind: 'swab.taken',
      data: { turn: turn.id, test: test.id, taker: way.taker, sites, ...short },
      with: [turn.pair.swabber],
    },
  ]);
}
