import { testsWithCode } from '../custody/code.ts';
import { lastTurnWith } from '../custody/person-turns.ts';
import { testOf } from '../custody/test.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import { factsIn, ofKind } from '../home.ts';
import type { PersonId, RoundId, TestId, TurnId } from '../ids.ts';
import type { Code, Shelf } from '../kind.ts';
import { Places } from '../places.ts';
import { resultsFor } from '../results/recorded.ts';
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
  /** Bags still to be looked at. */
  readonly left: Places;
  all: readonly Finding[];
  changed: boolean;
}

const boards = new WeakMap<Home, Board>();

function boardOf(home: Home): Board {
  const kept = boards.get(home);
  if (kept !== undefined) return kept;
  // At first every bag has changed, so none has to be found as one that leans on another.
  const left = Places.takenFrom(home.touched);
  const board: Board = {
    ...{ at: new Map(), decisions: new Places(), left, all: [], changed: left.any },
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
  board.all = secondLook(home, all).sort((a, b) => (a.id < b.id ? -1 : 1));
  return board.all;
}

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
  for (const place of board.left.takenOut()) {
    lookAt(home, board, place);
    if (--more <= 0) return board.left.any;
  }
  return false;
}

/** A changed test moves its codes' and its round's findings too; a changed turn its round's. */
function leaningOn(home: Home, { left, decisions }: Board, [shelf, key]: [Shelf, string]): void {
  left.add(shelf, key);
  const addTurn = (id: TurnId | undefined) => {
    const turn = id === undefined ? undefined : turnOf(home, id);
    if (turn !== undefined) left.add('round', turn.round);
  };
  /** A result is weighed against its person's others, and against its neighbours' in the round. */
  const addFit = (id: TestId) => {
    if (resultsFor(home, id).length === 0) return;
    const { turn: own } = testOf(home, id);
    const turn = own === undefined ? undefined : turnOf(home, own);
    if (turn === undefined) return;
    left.add('person', turn.person);
    left.add('round', turn.round);
  };
  /** Whose a test is shows in its turn: whether a result is another's, under every code it has. */
  const addCodes = (id: TestId) => {
    for (const { data } of factsIn(home, 'test', id)) {
      if (!('code' in data)) continue;
      left.add('code', data.code);
      for (const test of testsWithCode(home, data.code).keys()) addFit(test);
    }
  };
  if (shelf === 'turn') {
    addTurn(key as TurnId);
    for (const id of turnOf(home, key as TurnId)?.tests ?? []) addCodes(id);
  }
  if (shelf === 'finding') addSettled(home, left, key);
  if (shelf === 'code') addCorrected(home, left, key);
  if (shelf === 'person') addTurn(lastTurnWith(home, key as PersonId)?.id);
  if (shelf === 'code') for (const test of testsWithCode(home, key as Code).keys()) addFit(test);
  if (shelf === 'test') addFit(key as TestId);
  if (shelf === 'staff') for (const decision of decisions) left.add(...decision);
  if (shelf !== 'test') return;
  addTurn(testOf(home, key as TestId).turn);
  for (const fact of factsIn(home, 'test', key)) {
    if ('code' in fact.data) left.add('code', fact.data.code ?? '');
    if (fact.kind === 'test.registered') left.add('reference', fact.data.reference);
    if (fact.kind === 'result.recorded') left.add('report', fact.data.report ?? '');
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
