import type { FactOf } from '../catalogue.ts';
import { isOpen } from '../custody/person-turns.ts';
import type { Test } from '../custody/test.ts';
import { isLive, testOf } from '../custody/test.ts';
import type { Turn } from '../custody/turn.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import { factsIn, ofKind } from '../home.ts';
import type { FactId, PersonId, RoundId, StaffId } from '../ids.ts';
import { changeIn } from '../rounds/in-box.ts';
import type { Round } from '../rounds/round.ts';
import { roundOf } from '../rounds/round.ts';
import type { Finding } from './finding.ts';
import { finding } from './finding.ts';

/** What can be wrong between the turns, boxes and closings of one round. */
export function findingsOfRound(home: Home, id: RoundId): Finding[] {
  const round = roundOf(home, id);
  if (round === undefined) return [];
  const turns = round.turns.flatMap((turn) => turnOf(home, turn) ?? []);
  return [
    ...perPerson(turns).flatMap(([person, theirs]) => [
      ...twoTests(home, { round: id, person, turns: theirs }),
      ...swabbedAfterNo(home, theirs),
    ]),
    ...boxChanged(home, round),
    ...handedTwice(round),
    ...roundChanged(home, round, turns),
    ...twoOpen(turns),
  ];
}

function perPerson(turns: readonly Turn[]): [PersonId, Turn[]][] {
  const groups = new Map<PersonId, Turn[]>();
  for (const turn of turns) groups.set(turn.person, [...(groups.get(turn.person) ?? []), turn]);
  return [...groups];
}

const testsIn = (home: Home, turns: readonly Turn[]): Test[] =>
  turns.flatMap((turn) => turn.tests).map((id) => testOf(home, id));

function twoTests(
  home: Home,
  { round, person, turns }: { round: RoundId; person: PersonId; turns: readonly Turn[] },
): Finding[] {
  const live = testsIn(home, turns).filter(isLive);
  if (live.length < 2) return [];
  const members = live.flatMap((test) => test.taken?.id ?? []);
  return [
    finding('two-tests', `${person}/${round}`, { members, tests: live.map(({ id }) => id).sort() }),
  ];
}

/**
 * A no or a stop beside a swab that did not know of it: in another turn, or on another tablet in the same
 * one, as when somebody presses Stop on their own pictures. The yes must name every no it came after;
 * whatever the clocks say, an unnamed one is looked at by a person. A tube that was closed for ever since
 * was taken from them all the same.
 */
function swabbedAfterNo(home: Home, turns: readonly Turn[]): Finding[] {
  return testsIn(home, turns).flatMap((test) => {
    const own = turns.find((turn) => turn.tests.includes(test.id));
    const known = new Set(own?.willing?.data.knowing ?? []);
    if (test.taken === undefined) return [];
    const elsewhere = turns.filter((turn) => turn.id !== own?.id).flatMap(noIn);
    const within = own === undefined ? [] : stopsBeside(home, own, test.taken);
    const noes = [...elsewhere, ...within]
      .filter((id) => !known.has(id))
      .filter((id) => isLive(test) || !toNext(home, test, id));
    if (noes.length === 0) return [];
    return [
      finding('swabbed-after-no', test.id, { members: [test.taken.id, ...noes], tests: [test.id] }),
    ];
  });
}

/**
 * Whether a no was said to the next try, after a tube had gone wrong: asking again is quite usual then. One
 * that closed this kit was said to this one.
 */
function toNext(home: Home, { id, taken }: Test, no: FactId): boolean {
  const said = home.known.get(no);
  if (said === undefined || taken === undefined) return false;
  if (said.device === taken.device) return said.seq > taken.seq;
  const closed = ofKind(factsIn(home, 'test', id), 'kit.spoiled');
  const here = closed.some(({ data, device }) => data.why === 'stopped' && device === said.device);
  return !here && said.at > taken.at;
}

/** Stops of the turn on a tablet that is not the swab's, and that did not take the turn over afterwards. */
function stopsBeside(home: Home, turn: Turn, taken: FactOf<'swab.taken'>): FactId[] {
  const facts = factsIn(home, 'turn', turn.id);
  const handed = ofKind(facts, 'turn.resumed').filter(({ data }) => {
    const after = home.known.get(data.after);
    return after?.device === taken.device && after.seq >= taken.seq;
  });
  return ofKind(facts, 'turn.stopped')
    .filter(
      ({ device, seq }) =>
        device !== taken.device &&
        !handed.some((resumed) => resumed.device === device && resumed.seq < seq),
    )
    .map(({ id }) => id);
}

/** The no and the stops that stand in a turn. */
export function noIn(turn: Turn): FactId[] {
  const no = turn.willing?.data.answer === 'no' ? [turn.willing.id] : [];
  return [...no, ...turn.stops.map(({ id }) => id)];
}

/** A box was shut on some tubes, and by what was scanned others are in it. */
function boxChanged(home: Home, round: Round): Finding[] {
  return round.boxes.flatMap((box) => {
    const change = changeIn(home, box);
    if (change === undefined || box.closed === undefined) return [];
    const packed = change.more.flatMap((test) => test.packed.at(-1)?.id ?? []);
    const spoiled = change.gone.flatMap((id) => testOf(home, id).spoiled?.id ?? []);
    const members = [box.closed.id, ...packed, ...spoiled];
    return [finding('box-changed', box.id, { members, rounds: [round.id] })];
  });
}

function handedTwice(round: Round): Finding[] {
  return round.boxes
    .filter((box) => new Set(box.handed.map(({ data }) => data.count)).size > 1)
    .map((box) =>
      finding('handed-twice', box.id, {
        members: box.handed.map(({ id }) => id),
        rounds: [round.id],
      }),
    );
}

/**
 * The round was closed on some tests, and now others are there, or some are not. It holds nothing: the round
 * is closed anew, and that answers it.
 */
function roundChanged(home: Home, round: Round, turns: readonly Turn[]): Finding[] {
  const closing = round.closings.at(-1);
  if (closing === undefined) return [];
  const listed = new Set([...closing.data.packed, ...closing.data.spoiled]);
  const present = turns.flatMap((turn) => turn.tests).map((id) => testOf(home, id));
  const strange = present.filter((test) => !listed.has(test.id));
  const here = new Set(present.map((test) => test.id));
  const gone = [...listed].filter((id) => !here.has(id));
  if (strange.length === 0 && gone.length === 0) return [];
  const members = [closing.id, ...strange.flatMap((test) => test.opened?.id ?? [])];
  return [finding('round-changed', closing.id, { members })];
}

/** One pair of hands in two turns at once: told, but it holds nothing. */
function twoOpen(turns: readonly Turn[]): Finding[] {
  const open = turns.filter((turn) => isOpen(turn) && turn.interrupted === undefined);
  const byStaff = new Map<StaffId, Turn[]>();
  for (const turn of open) {
    for (const staff of new Set([turn.pair.swabber, turn.pair.recorder])) {
      byStaff.set(staff, [...(byStaff.get(staff) ?? []), turn]);
    }
  }
  return [...byStaff]
    .filter(([, theirs]) => theirs.length > 1)
    .map(([staff, theirs]) =>
      finding('two-open', staff, { members: theirs.map((turn) => turn.openedBy) }),
    );
}
