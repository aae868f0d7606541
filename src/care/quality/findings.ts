import { testsWithCode } from '../custody/code.ts';
import { turnsWith } from '../custody/person-turns.ts';
import { testOf } from '../custody/test.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import { factsIn } from '../home.ts';
import type { PersonId, RoundId, TestId, TurnId } from '../ids.ts';
import type { Code, Shelf } from '../kind.ts';
import { resultsFor } from '../results/recorded.ts';
import type { Finding } from './finding.ts';
import { finding } from './finding.ts';
import { findingsOfCode } from './of-code.ts';
import { misfitsOfPerson, misfitsOfRound } from './of-fit.ts';
import { editedTwice, roleNeeded, withoutRight } from './of-record.ts';
import { findingsOfRound } from './of-round.ts';
import { findingsOfReference, findingsOfTest } from './of-test.ts';

type Place = `${Shelf} ${string}`;
interface Board {
  readonly at: Map<Place, readonly Finding[]>;
  /** Bags that hold decisions needing a role: looked at again when somebody's role changes. */
  readonly decisions: Set<Place>;
  all: readonly Finding[];
}

const boards = new WeakMap<Home, Board>();

/**
 * Every finding in the home, open or settled, by name. Only bags that changed are looked at again,
 * with those that lean on them: five years of facts must not be searched for every tap.
 */
export function findings(home: Home): readonly Finding[] {
  const board: Board = boards.get(home) ?? { at: new Map(), decisions: new Set(), all: [] };
  boards.set(home, board);
  if (home.touched.size === 0) return board.all;
  const places = leaningOn(home, board);
  home.touched.clear();
  for (const place of places) {
    const found = lookAt(home, place, board);
    if (found.length === 0) board.at.delete(place);
    else board.at.set(place, found);
  }
  const all = unreadable(home);
  for (const found of board.at.values()) all.push(...found);
  board.all = all.sort((a, b) => (a.id < b.id ? -1 : 1));
  return board.all;
}

/** A changed test moves its codes' and its round's findings too; a changed turn its round's. */
function leaningOn(home: Home, board: Board): Set<Place> {
  const places = new Set<Place>(home.touched);
  const addTurn = (id: TurnId | undefined) => {
    const turn = id === undefined ? undefined : turnOf(home, id);
    if (turn !== undefined) places.add(`round ${turn.round}`);
  };
  /** A result is weighed against its person's others, and against its neighbours' in the round. */
  const addFit = (id: TestId) => {
    if (resultsFor(home, id).length === 0) return;
    const { turn: own } = testOf(home, id);
    const turn = own === undefined ? undefined : turnOf(home, own);
    if (turn === undefined) return;
    places.add(`person ${turn.person}`);
    places.add(`round ${turn.round}`);
  };
  for (const place of home.touched) {
    const [shelf, key] = split(place);
    if (shelf === 'turn') addTurn(key as TurnId);
    if (shelf === 'person') addTurn(turnsWith(home, key as PersonId).at(-1)?.id);
    if (shelf === 'code') for (const test of testsWithCode(home, key as Code).keys()) addFit(test);
    if (shelf === 'test') addFit(key as TestId);
    if (shelf === 'staff') for (const each of board.decisions) places.add(each);
    if (shelf !== 'test') continue;
    const test = testOf(home, key as TestId);
    addTurn(test.turn);
    for (const fact of factsIn(home, 'test', key)) {
      if ('code' in fact.data) places.add(`code ${fact.data.code ?? ''}`);
      if (fact.kind === 'test.registered') places.add(`reference ${fact.data.reference}`);
    }
  }
  return places;
}

function lookAt(home: Home, place: Place, board: Board): Finding[] {
  const [shelf, key] = split(place);
  const facts = factsIn(home, shelf, key);
  const decisions = facts.filter((fact) => roleNeeded(fact) !== undefined);
  if (decisions.length > 0) board.decisions.add(place);
  return [...ofShelf(home, shelf, key), ...decisions.flatMap((fact) => withoutRight(home, fact))];
}

function ofShelf(home: Home, shelf: Shelf, key: string): Finding[] {
  switch (shelf) {
    case 'code':
      return findingsOfCode(home, key as Code);
    case 'test':
      return findingsOfTest(home, key as TestId);
    case 'reference':
      return findingsOfReference(home, key);
    case 'round':
      return [
        ...findingsOfRound(home, key as RoundId),
        ...editedTwice(home, shelf, key),
        ...misfitsOfRound(home, key as RoundId),
      ];
    case 'person':
      return [...editedTwice(home, shelf, key), ...misfitsOfPerson(home, key as PersonId)];
    case 'staff':
    case 'policy':
      return editedTwice(home, shelf, key);
    default:
      return [];
  }
}

const unreadable = (home: Home): Finding[] =>
  [...home.unreadable.keys()].map((id) => finding('unreadable', id, { members: [id] }));

function split(place: Place): [Shelf, string] {
  const gap = place.indexOf(' ');
  return [place.slice(0, gap) as Shelf, place.slice(gap + 1)];
}
