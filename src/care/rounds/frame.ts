import { turnsInRound } from '../custody/person-turns.ts';
import { stepOf, testInHand } from '../custody/step.ts';
import type { Test } from '../custody/test.ts';
import { testOf } from '../custody/test.ts';
import type { Turn } from '../custody/turn.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import type { PersonId } from '../ids.ts';
import { heldBy, isWithdrawn } from '../quality/held.ts';
import { actionsFor, isSettled } from '../results/actions.ts';
import { outcomeOf, registrationOf } from '../results/outcome.ts';
import type { Round } from './round.ts';
import { roundOf } from './round.ts';

/** The chain of custody, in order: one bead each on a person's wire. */
export const beadNames = [
  'who',
  'consent',
  'label',
  'swab',
  'seal',
  'pack',
  'handOver',
  'register',
  'result',
] as const;
export type BeadName = (typeof beadNames)[number];
export type BeadState = 'todo' | 'hand' | 'done' | 'unneeded' | 'look';
export type Beads = Readonly<Record<BeadName, BeadState>>;

export interface WireOf {
  readonly person: PersonId;
  readonly beads: Beads;
  /** The turn and the kit the beads speak of: the live one, or the last. */
  readonly turn: Turn | undefined;
  readonly test: Test | undefined;
  /** How the person's part ended, or how far it is. */
  readonly so:
    | 'waiting'
    | 'in-turn'
    | 'taken'
    | 'declined'
    | 'not-now'
    | 'asleep'
    | 'away'
    | 'stopped'
    | 'kit-fault'
    | 'not-them'
    | 'interrupted';
}

/** One wire for each person on a round, in the round's order, then anybody swabbed who was not on it. */
export function frameOf(home: Home, round: Round): WireOf[] {
  const listed = round.people.map((each) => each.person);
  const swabbed = round.turns.flatMap((id) => turnOf(home, id)?.person ?? []);
  const people = new Set([...listed, ...swabbed]);
  return [...people].map((person) => wireOf(home, round, person));
}

/** The wire of one test by itself, whatever else was done for its person in the round. */
export function wireOfTest(home: Home, test: Test): WireOf | undefined {
  const turn = test.turn === undefined ? undefined : turnOf(home, test.turn);
  if (turn === undefined) return undefined;
  const live = test.spoiled === undefined ? test : undefined;
  const { person } = turn;
  return { person, turn, test, so: soFar(turn, live), beads: beadsOf(home, { turn, test, live }) };
}

export function wireOf(home: Home, round: Round, person: PersonId): WireOf {
  const turns = turnsInRound(home, person, round.id);
  const tests = turns.flatMap((turn) => turn.tests).map((id) => testOf(home, id));
  const live = tests.findLast((test) => test.stage !== 'spoiled');
  const turn = (live && turns.find((each) => each.tests.includes(live.id))) ?? turns.at(-1);
  const test = live ?? tests.at(-1);
  return { person, turn, test, so: soFar(turn, live), beads: beadsOf(home, { turn, test, live }) };
}

function soFar(turn: Turn | undefined, live: Test | undefined): WireOf['so'] {
  if (turn === undefined) return 'waiting';
  if (turn.closed === undefined) return 'in-turn';
  if (live?.taken !== undefined) return 'taken';
  // Asleep and away are no answer of theirs: they are never counted with those who did not say yes.
  const answer = turn.willing?.data.answer;
  if (turn.closed.data.end === 'not-now' && (answer === 'asleep' || answer === 'away'))
    return answer;
  // The turn ended well, but its tube was closed for ever at the pack table.
  return turn.closed.data.end === 'taken' ? 'kit-fault' : turn.closed.data.end;
}

interface Told {
  readonly turn: Turn | undefined;
  readonly test: Test | undefined;
  readonly live: Test | undefined;
}

const all = (state: BeadState): Record<BeadName, BeadState> =>
  Object.fromEntries(beadNames.map((name) => [name, state])) as Record<BeadName, BeadState>;

function beadsOf(home: Home, { turn, test, live }: Told): Beads {
  if (turn === undefined) return all('todo');
  const ended = turn.closed !== undefined;
  if (ended && live === undefined) return ofEnded(turn, test);
  const beads = all('todo');
  mark(beads, doneBeads(home, turn, live));
  if (turn.paper !== undefined) unsaid(beads, turn);
  if (!ended) beads[inHand(home, turn)] = 'hand';
  if (live !== undefined) afterSeal(home, live, beads);
  return beads;
}

/** A turn that ended without a tube: what was done stays done, what follows is not needed. */
function ofEnded(turn: Turn, test: Test | undefined): Beads {
  const beads = all('unneeded');
  const right = turn.identity?.data.chosen === turn.person;
  beads.who = right ? 'done' : 'look';
  if (turn.willing !== undefined) beads.consent = 'done';
  // A kit that failed leaves work: somebody has to try again. It may fail after the turn, in the bag.
  const end = turn.closed?.data.end;
  if ((end === 'kit-fault' || end === 'taken') && test?.spoiled !== undefined) {
    beads[test.spoilReason === 'leak' ? 'seal' : test.begun ? 'swab' : 'label'] = 'look';
  }
  return beads;
}

/** From paper a swab may be known and not how they were known, or that they said yes. */
function unsaid(beads: Record<BeadName, BeadState>, turn: Turn): void {
  if (turn.identity === undefined) beads.who = 'look';
  if (turn.willing === undefined) beads.consent = 'look';
}

function mark(beads: Record<BeadName, BeadState>, done: readonly BeadName[]): void {
  for (const name of done) beads[name] = 'done';
}

function doneBeads(home: Home, turn: Turn, live: Test | undefined): BeadName[] {
  const done: BeadName[] = [];
  if (!turn.needsWho) done.push('who');
  if (!turn.needsWilling) done.push('consent');
  if (live === undefined) return done;
  const order: Test['stage'][] = ['labelled', 'begun', 'taken', 'closed', 'sealed', 'packed'];
  const reached = (stage: Test['stage']) => order.indexOf(live.stage) >= order.indexOf(stage);
  if (reached('labelled')) done.push('label');
  if (reached('taken')) done.push('who', 'consent', 'swab');
  if (reached('sealed')) done.push('seal');
  if (reached('packed')) done.push('pack');
  if (handedOver(home, turn, live)) done.push('handOver');
  if (registrationOf(home, live.id).registered !== undefined) done.push('register');
  return done;
}

const handedOver = (home: Home, turn: Turn, live: Test): boolean =>
  roundOf(home, turn.round)?.boxes.some((box) => box.id === live.box && box.handed.length > 0) ??
  false;

function inHand(home: Home, turn: Turn): BeadName {
  switch (stepOf(turn, testInHand(home, turn))) {
    case 'who':
    case 'interrupted':
      return 'who';
    case 'willing':
    case 'stopped':
      return 'consent';
    case 'kit':
    case 'check':
    case 'label-tube':
    case 'label-bag':
      return 'label';
    case 'ready':
    case 'swab':
      return 'swab';
    case 'lid':
    case 'bag':
    case 'settled':
    case 'ended':
      return 'seal';
  }
}

/** What a finding, a settlement or a result says about a sealed tube. */
function afterSeal(home: Home, live: Test, beads: Record<BeadName, BeadState>): void {
  const held = heldBy(home, live.id);
  if (held.length > 0) beads[heldBead(held[0]?.kind)] = 'look';
  if (isWithdrawn(home, live.id)) {
    for (const name of ['pack', 'handOver', 'register', 'result'] as const) {
      if (beads[name] === 'todo') beads[name] = 'unneeded';
    }
    afterResult(home, live, beads);
    return;
  }
  if (
    registrationOf(home, live.id).registered === undefined &&
    registrationOf(home, live.id).failures.length > 0
  ) {
    beads.register = 'look';
  }
  afterResult(home, live, beads);
}

function afterResult(home: Home, live: Test, beads: Record<BeadName, BeadState>): void {
  const outcome = outcomeOf(home, live.id);
  const settled = actionsFor(home, live.id).every(isSettled);
  if (outcome.state === 'withdrawn') beads.result = settled ? 'unneeded' : 'hand';
  if (outcome.state === 'held') beads.result = 'look';
  if (outcome.state === 'known') {
    beads.result = settled ? 'done' : 'hand';
  }
}

function heldBead(kind: string | undefined): BeadName {
  switch (kind) {
    case 'swabbed-after-no':
      return 'consent';
    case 'two-tests':
      return 'swab';
    case 'packed-twice':
    case 'packed-though-spoiled':
      return 'pack';
    case 'registered-twice':
    case 'reference-on-two':
      return 'register';
    case 'two-results':
    case 'result-unmatched':
    case 'result-for-closed':
    case 'result-before-swab':
    case 'result-does-not-fit':
    case 'report-on-two':
    case 'result-for-withdrawn':
    case 'result-of-another':
      return 'result';
    default:
      return 'label';
  }
}
