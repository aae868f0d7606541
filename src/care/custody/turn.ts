import type { Fact, FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { concluding, ofKind, replacedBy } from '../home.ts';
import type { FactId, PersonId, RoundId, StaffId, TestId, TurnId } from '../ids.ts';
import type { Instant } from '../time.ts';
import type { Paper } from './paper.ts';
import { inTurnOrder } from './turn-order.ts';

export interface Pair {
  readonly swabber: StaffId;
  readonly recorder: StaffId;
}

/**
 * One turn with one person, as its own facts tell it. What is asked next (step.ts) follows from
 * this and from how far the kit in hand has come.
 */
export interface Turn {
  readonly id: TurnId;
  readonly round: RoundId;
  readonly person: PersonId;
  readonly pair: Pair;
  /** Every pair that had this turn, first to last. */
  readonly pairs: readonly Pair[];
  /** The tablet that has the turn in hand. */
  readonly device: string;
  readonly openedAt: Instant;
  readonly lastAt: Instant;
  readonly lastFact: FactId;
  readonly openedBy: FactId;
  /** Set where the whole turn was written on paper first. */
  readonly paper: Paper | undefined;
  readonly identity: FactOf<'identity.established'> | undefined;
  readonly needsWho: boolean;
  readonly needsWilling: boolean;
  readonly willing: FactOf<'willingness.seen'> | undefined;
  /** The kit in hand: opened in this turn and not spoiled. */
  readonly test: TestId | undefined;
  /** Every kit opened in this turn. */
  readonly tests: readonly TestId[];
  /** Kits with which a swab was begun: each is a try. */
  readonly begun: readonly TestId[];
  /** Every stop that stands: the person may have pressed it on one tablet, the recorder on another. */
  readonly stops: readonly FactOf<'turn.stopped'>[];
  /** The last of them. */
  readonly stop: FactOf<'turn.stopped'> | undefined;
  readonly stopWhy: FactOf<'stop.explained'> | undefined;
  readonly interrupted: FactOf<'turn.interrupted'> | undefined;
  readonly closed: FactOf<'turn.closed'> | undefined;
}

type Growing = { -readonly [K in keyof Turn]: Turn[K] };

export const turnOf: (home: Home, id: TurnId) => Turn | undefined = concluding(
  'turn',
  concludeTurn,
);

function concludeTurn(facts: readonly Fact[]): Turn | undefined {
  const replaced = replacedBy(facts);
  const opened = ofKind(facts, 'turn.opened').findLast((fact) => !replaced.has(fact.id));
  if (opened === undefined) return undefined;
  const turn = begin(opened);
  for (const fact of inTurnOrder(facts)) if (!replaced.has(fact.id)) advance(turn, fact);
  return turn;
}

function begin(opened: FactOf<'turn.opened'>): Growing {
  const { turn: id, round, person, swabber, recorder } = opened.data;
  const pair = { swabber, recorder };
  return {
    id,
    round,
    person,
    pair,
    pairs: [pair],
    device: opened.device,
    openedAt: opened.at,
    lastAt: opened.at,
    lastFact: opened.id,
    openedBy: opened.id,
    paper: opened.data.paper,
    identity: undefined,
    needsWho: true,
    needsWilling: true,
    willing: undefined,
    test: undefined,
    tests: [],
    begun: [],
    stops: [],
    stop: undefined,
    stopWhy: undefined,
    interrupted: undefined,
    closed: undefined,
  };
}

/** The stops that this hand pressed on this tablet: nobody can say of another's that it was a mistake. */
export const ownStops = (
  turn: Turn,
  { device, by }: Pick<Fact, 'device' | 'by'>,
): readonly FactOf<'turn.stopped'>[] =>
  turn.stops.filter((stop) => stop.device === device && stop.by === by);

function advance(turn: Growing, fact: Fact): void {
  turn.lastAt = fact.at;
  turn.lastFact = fact.id;
  switch (fact.kind) {
    case 'identity.established':
      turn.identity = fact;
      turn.needsWho = fact.data.chosen !== turn.person;
      break;
    case 'identity.lapsed':
      turn.needsWho = true;
      break;
    case 'willingness.seen':
      turn.willing = fact;
      turn.needsWilling = fact.data.answer !== 'yes';
      break;
    case 'kit.opened':
      turn.test = fact.data.test;
      turn.tests = [...turn.tests, fact.data.test];
      break;
    // A swab from paper had no dials: that it was taken says that it was begun.
    case 'site.started':
    case 'swab.taken':
      if (!turn.begun.includes(fact.data.test)) turn.begun = [...turn.begun, fact.data.test];
      break;
    case 'kit.spoiled':
      spoil(turn, fact.data.test);
      break;
    case 'turn.stopped':
      turn.stops = [...turn.stops, fact];
      turn.stop = fact;
      break;
    // The stop it names is passed over as replaced; any other still stands.
    case 'stop.mistaken':
      turn.needsWilling = true;
      break;
    case 'stop.explained':
      turn.stopWhy = fact;
      break;
    case 'turn.interrupted':
      turn.interrupted = fact;
      break;
    case 'turn.resumed':
      resume(turn, fact);
      break;
    case 'turn.closed':
      turn.closed = fact;
      break;
    default:
      // Labels, sites, lid and seal move the kit, not the turn: see test.ts.
      break;
  }
}

/** A kit that had touched the person asks for a fresh yes; one that had not asks only for a new kit. */
function spoil(turn: Growing, test: TestId): void {
  if (turn.test === test) turn.test = undefined;
  if (turn.begun.includes(test)) turn.needsWilling = true;
}

function resume(turn: Growing, fact: FactOf<'turn.resumed'>): void {
  const { swabber, recorder, again } = fact.data;
  turn.interrupted = undefined;
  turn.device = fact.device;
  turn.pair = { swabber, recorder };
  turn.pairs = [...turn.pairs, turn.pair];
  if (again === 'who') turn.needsWho = true;
  if (again !== 'nothing') turn.needsWilling = true;
}
