import { testsWithCode } from '../custody/code.ts';
import { turnsWith } from '../custody/person-turns.ts';
import { testOf } from '../custody/test.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import { factsIn, keysOn, ofKind } from '../home.ts';
import type { PersonId, RoundId, TestId, TurnId } from '../ids.ts';
import type { Code, Shelf } from '../kind.ts';
import { Places } from '../places.ts';
import { signsOf } from '../results/expected.ts';
import { resultsFor } from '../results/recorded.ts';
import type { Instant } from '../time.ts';
import type { Finding } from './finding.ts';
import { finding } from './finding.ts';
import { findingsOfCode } from './of-code.ts';
import { misfitsOfPerson, misfitsOfRound } from './of-fit.ts';
import { editedTwice, roleNeeded, withoutRight } from './of-record.ts';
import { findingsOfReport } from './of-report.ts';
import { findingsOfRound } from './of-round.ts';
import { findingsOfReference, findingsOfTest } from './of-test.ts';
import { againstWish } from './of-wish.ts';
import { secondLook } from './second-look.ts';

interface Board {
  readonly at: Map<Shelf, Map<string, readonly Finding[]>>;
  /** Bags that hold decisions needing a role: looked at again when somebody's role changes. */
  readonly decisions: Places;
  /**
   * People of whom something changed by which results are weighed, theirs and their neighbours', with the
   * first instant that it bears on. Looking at every round of five years for each result would be felt.
   */
  readonly weighed: Map<PersonId, Instant>;
  /** The signs of each person by which results were last weighed. */
  readonly signs: Map<PersonId, string>;
  /** Bags still to be looked at. */
  readonly left: Places;
  all: readonly Finding[];
  changed: boolean;
}

/** Before every instant. */
const EVER = '' as Instant;

const boards = new WeakMap<Home, Board>();

function boardOf(home: Home): Board {
  const kept = boards.get(home);
  if (kept !== undefined) return kept;
  // At first every bag has changed, so none has to be found as one that leans on another.
  const left = Places.takenFrom(home.touched);
  const board: Board = {
    ...{ at: new Map(), decisions: new Places(), weighed: new Map(), signs: new Map() },
    ...{ left, all: [], changed: left.any },
  };
  boards.set(home, board);
  return board;
}

/**
 * Every finding in the home, open or settled, by name. Only bags that changed are looked at again,
 * with those that lean on them: five years of facts must not be searched for every tap.
 */
export function findings(home: Home): readonly Finding[] {
  lookFurther(home, Infinity);
  const board = boardOf(home);
  if (!board.changed) return board.all;
  board.changed = false;
  const all = unreadable(home);
  for (const found of board.at.values()) for (const each of found.values()) all.push(...each);
  board.all = secondLook(home, all).sort(byName);
  return board.all;
}

/** One colleague may stand in two turns in each of two rounds: those go by what they are made of. */
const byName = (a: Finding, b: Finding): number =>
  compare(a.id, b.id) || compare(a.members.join(), b.members.join());
const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/**
 * Works at the findings of a home for a while: `count` bags at most. False once nothing is left, and
 * `findings` has them all at hand. So the first look at five years need not hold up anybody's hand.
 */
export function lookFurther(home: Home, count: number): boolean {
  const board = boardOf(home);
  let more = count;
  for (const place of home.touched.takenOut()) {
    board.changed = true;
    leaningOn(home, board, place);
    if (--more <= 0) return true;
  }
  for (const [person, from] of board.weighed) weighAgain(home, board, { person, from });
  board.weighed.clear();
  for (const place of board.left.takenOut()) {
    lookAt(home, board, place);
    if (--more <= 0) return board.left.any;
  }
  return false;
}

/** A changed test moves its codes' and its round's findings too; a changed turn its round's. */
function leaningOn(home: Home, board: Board, [shelf, key]: [Shelf, string]): void {
  const { left, decisions } = board;
  left.add(shelf, key);
  switch (shelf) {
    case 'turn':
      ofTurn(home, board, key as TurnId);
      return;
    case 'test':
      ofTest(home, board, key as TestId);
      return;
    case 'box':
      ofBox(home, board, key);
      return;
    case 'code':
      addCorrected(home, left, key);
      for (const test of testsWithCode(home, key as Code).keys()) weigh(home, board, test);
      return;
    case 'finding':
      addSettled(home, left, key);
      return;
    case 'person':
      if (signsChanged(home, board, key as PersonId)) board.weighed.set(key as PersonId, EVER);
      return;
    case 'staff':
      for (const decision of decisions) left.add(...decision);
      return;
    // Each result is weighed by the policy of its day. Who confirms one does so once in months.
    case 'policy':
      for (const each of ['person', 'round'] as const)
        for (const id of keysOn(home, each)) left.add(each, id);
      return;
    default:
      return;
  }
}

/** Whoever was named by mistake has one turn less: their round and their results are looked at too. */
function ofTurn(home: Home, board: Board, id: TurnId): void {
  for (const { data } of ofKind(factsIn(home, 'turn', id), 'turn.opened')) {
    board.left.add('round', data.round);
    board.left.add('person', data.person);
  }
  for (const test of turnOf(home, id)?.tests ?? []) {
    weigh(home, board, test);
    ofCodes(home, board, test);
  }
}

/** Whose a test is shows in its turn: whether a result is another's, under every code it has. */
function ofCodes(home: Home, board: Board, id: TestId): void {
  for (const { data } of factsIn(home, 'test', id)) {
    if (!('code' in data)) continue;
    board.left.add('code', data.code);
    for (const test of testsWithCode(home, data.code).keys()) weigh(home, board, test);
  }
}

function ofTest(home: Home, board: Board, id: TestId): void {
  weigh(home, board, id);
  const { turn } = testOf(home, id);
  const round = turn === undefined ? undefined : turnOf(home, turn)?.round;
  if (round !== undefined) board.left.add('round', round);
  for (const fact of factsIn(home, 'test', id)) {
    if ('code' in fact.data) board.left.add('code', fact.data.code ?? '');
    if (fact.kind === 'test.registered') board.left.add('reference', fact.data.reference);
    if (fact.kind === 'result.recorded') board.left.add('report', fact.data.report ?? '');
    if (fact.kind === 'bag.packed') ofBox(home, board, fact.data.box);
  }
}

/** What is in a box is weighed with its round, whoever's turn the tube is from. */
function ofBox(home: Home, { left }: Board, id: string): void {
  for (const { data } of ofKind(factsIn(home, 'box', id), 'box.started'))
    left.add('round', data.round);
}

/** A result is weighed against its person's others, and against its neighbours' in this and later rounds. */
function weigh(home: Home, { weighed }: Board, id: TestId): void {
  const { turn } = testOf(home, id);
  if (turn === undefined || resultsFor(home, id).length === 0) return;
  const taken = ofKind(factsIn(home, 'test', id), 'swab.taken');
  const [from] = taken.map(({ at }) => at).sort();
  if (from === undefined) return;
  for (const { data } of ofKind(factsIn(home, 'turn', turn), 'turn.opened')) {
    const before = weighed.get(data.person);
    if (before === undefined || from < before) weighed.set(data.person, from);
  }
}

/** Most that is written down of a person says nothing of their results; only signs and contacts do. */
function signsChanged(home: Home, { signs }: Board, person: PersonId): boolean {
  const now = signsOf(home, person);
  const changed = signs.get(person) !== now;
  signs.set(person, now);
  return changed;
}

/** The person's own results, and those of every round in which they were swabbed since. */
function weighAgain(
  home: Home,
  { left }: Board,
  { person, from }: { readonly person: PersonId; readonly from: Instant },
): void {
  left.add('person', person);
  for (const { round, tests } of turnsWith(home, person)) {
    const since = tests.some((id) => (testOf(home, id).taken?.at ?? '') >= from);
    if (since) left.add('round', round);
  }
}

/** Whether a correction ended a hold rests on how that was settled, and on what it replaced. */
function addSettled(home: Home, left: Places, finding: string): void {
  const [kind = '', key = ''] = finding.split(/:(.*)/s);
  if (kind === 'result-before-swab') left.add('test', key);
  if (kind === 'two-results') addCorrected(home, left, key);
}

function addCorrected(home: Home, left: Places, code: string): void {
  for (const { data } of ofKind(factsIn(home, 'code', code), 'result.recorded'))
    if (data.test !== undefined && data.replaces !== undefined) left.add('test', data.test);
}

function lookAt(home: Home, board: Board, [shelf, key]: [Shelf, string]): void {
  const decisions = factsIn(home, shelf, key).filter(
    // A result is filed in several bags: it is judged in its test's.
    (fact) =>
      (fact.kind !== 'result.recorded' || shelf === 'test') && roleNeeded(home, fact) !== undefined,
  );
  if (shelf === 'person') signsChanged(home, board, key as PersonId);
  if (decisions.length > 0) board.decisions.add(shelf, key);
  const found = [
    ...ofShelf(home, shelf, key),
    ...decisions.flatMap((fact) => withoutRight(home, fact)),
  ];
  if (found.length === 0) board.at.get(shelf)?.delete(key);
  else if (board.at.get(shelf)?.set(key, found) === undefined)
    board.at.set(shelf, new Map([[key, found]]));
}

function ofShelf(home: Home, shelf: Shelf, key: string): Finding[] {
  switch (shelf) {
    case 'code':
      return findingsOfCode(home, key as Code);
    case 'test':
      return findingsOfTest(home, key as TestId);
    case 'reference':
      return findingsOfReference(home, key);
    case 'report':
      return findingsOfReport(home, key);
    case 'round':
      return [
        ...findingsOfRound(home, key as RoundId),
        ...editedTwice(home, shelf, key),
        ...misfitsOfRound(home, key as RoundId),
      ];
    case 'person':
      return [
        ...editedTwice(home, shelf, key),
        ...misfitsOfPerson(home, key as PersonId),
        ...againstWish(home, key as PersonId),
      ];
    case 'staff':
    case 'policy':
      return editedTwice(home, shelf, key);
    default:
      return [];
  }
}

const unreadable = (home: Home): Finding[] =>
  [...home.unreadable.keys()].map((id) => finding('unreadable', id, { members: [id] }));
