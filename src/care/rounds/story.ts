import type { Fact, FactOf, Kind } from '../catalogue.ts';
import type { Decision } from '../consent/decision.ts';
import { consentOn } from '../consent/decision.ts';
import type { Test } from '../custody/test.ts';
import { testOf } from '../custody/test.ts';
import type { Turn } from '../custody/turn.ts';
import { turnOf } from '../custody/turn.ts';
import { inTurnOrder } from '../custody/turn-order.ts';
import type { Home } from '../home.ts';
import { factsIn, ofKind } from '../home.ts';
import type { PersonId, TestId } from '../ids.ts';
import type { InForce } from '../policy/in-force.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Finding, Settled, Standing } from '../quality/finding.ts';
import { standingOf } from '../quality/finding.ts';
import { findings } from '../quality/findings.ts';
import type { Day } from '../time.ts';
import { dayOf } from '../time.ts';
import type { BeadName } from './frame.ts';
import { beadNames } from './frame.ts';
import type { Round } from './round.ts';
import { roundOf } from './round.ts';

/** One thing that happened, and whether another fact has put it right since. */
export interface Told {
  readonly fact: Fact;
  readonly replaced: boolean;
}

export interface Story {
  readonly test: Test;
  readonly turn: Turn;
  readonly round: Round | undefined;
  /** The day of the swab, or of the turn where none was taken. */
  readonly on: Day;
  /** What happened under each bead, in order. */
  readonly beads: Readonly<Record<BeadName, readonly Told[]>>;
  readonly findings: readonly { readonly finding: Finding; readonly standing: Standing }[];
  readonly settlements: readonly Settled[];
  /** By which policy that day was worked, and the fact by which somebody confirmed it. */
  readonly policy: InForce;
}

/** Everything that is on record about one test, under the nine beads of its wire. */
export function storyOf(home: Home, id: TestId): Story | undefined {
  const test = testOf(home, id);
  const turn = test.turn === undefined ? undefined : turnOf(home, test.turn);
  if (turn === undefined) return undefined;
  const round = roundOf(home, turn.round);
  const on = dayOf(test.taken?.at ?? turn.openedAt, home.service.zone);
  const found = findings(home)
    .filter(({ tests }) => tests.includes(id))
    .map((finding) => ({ finding, standing: standingOf(home, finding) }));
  return {
    ...{ test, turn, round, on },
    beads: underBeads(factsAbout(home, { test, turn, round, on })),
    findings: found,
    settlements: found.flatMap(({ finding }) => settlementsOf(home, finding)),
    policy: policyOn(home, on),
  };
}

const settlementsOf = (home: Home, found: Finding): Settled[] =>
  factsIn(home, 'finding', found.id).filter((fact): fact is Settled => fact.kind === 'settled');

interface About {
  readonly test: Test;
  readonly turn: Turn;
  readonly round: Round | undefined;
  readonly on: Day;
}

/** Facts of the turn that speak of another kit are another test's story. */
function factsAbout(home: Home, { test, turn, round, on }: About): Fact[] {
  const mine = (fact: Fact) => !('test' in fact.data) || fact.data.test === test.id;
  const bedside = inTurnOrder(factsIn(home, 'turn', turn.id)).filter(mine);
  const boxes = test.packed.flatMap(({ data }) => factsIn(home, 'box', data.box));
  const courier = factsIn(home, 'round', turn.round).filter(({ kind }) =>
    kind.startsWith('courier.'),
  );
  const results = test.codes.flatMap((code) => factsIn(home, 'code', code)).filter(isResult);
  const facts: Fact[] = [
    ...(round === undefined
      ? []
      : decisionsOn(home, turn.person, { test: round.planned.data.test, on })),
    ...bedside,
    ...boxes.filter(mine),
    ...courier,
    ...factsIn(home, 'test', test.id),
    ...results,
  ];
  return [...new Set(facts)];
}

/** Every decision about that day, those put right since too; where there is none, what stands instead. */
function decisionsOn(
  home: Home,
  person: PersonId,
  { test, on }: { readonly test: string; readonly on: Day },
): Decision[] {
  const about = ofKind(factsIn(home, 'person', person), 'consent.decided').filter(
    ({ data }) => data.test === test && data.from <= on && on <= data.until,
  );
  if (about.length > 0) return about;
  const instead = consentOn(home, person, test, on);
  return 'decision' in instead ? [instead.decision] : [];
}

const isResult = (fact: Fact): fact is FactOf<'result.recorded'> & Fact =>
  fact.kind === 'result.recorded';

const BEAD: Partial<Record<Kind, BeadName>> = {
  'turn.opened': 'who',
  'identity.established': 'who',
  'identity.lapsed': 'who',
  'turn.interrupted': 'who',
  'turn.resumed': 'who',
  'consent.decided': 'consent',
  'willingness.seen': 'consent',
  'turn.stopped': 'consent',
  'stop.mistaken': 'consent',
  'stop.explained': 'consent',
  'kit.opened': 'label',
  'kit.checked': 'label',
  'label.read': 'label',
  'way.chosen': 'swab',
  'site.started': 'swab',
  'site.ended': 'swab',
  'swab.taken': 'swab',
  'tube.closed': 'seal',
  'tube.sealed': 'seal',
  'kit.spoiled': 'seal',
  'turn.closed': 'seal',
  'bag.packed': 'pack',
  'box.closed': 'pack',
  'box.handed': 'handOver',
  'courier.missed': 'handOver',
  'courier.rebooked': 'handOver',
  'test.registered': 'register',
  'registration.failed': 'register',
  'result.recorded': 'result',
  'result.chased': 'result',
  'action.named': 'result',
  'action.done': 'result',
};

function underBeads(facts: readonly Fact[]): Story['beads'] {
  const replaced = new Set(
    facts.flatMap((fact) => ('replaces' in fact.data ? (fact.data.replaces ?? []) : [])),
  );
  const under = (bead: BeadName) =>
    facts
      .filter((fact) => BEAD[fact.kind] === bead)
      .map((fact) => ({ fact, replaced: replaced.has(fact.id) }));
  return Object.fromEntries(beadNames.map((name) => [name, under(name)])) as Record<
    BeadName,
    Told[]
  >;
}
