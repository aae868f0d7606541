import type { NewFact } from '../care/catalogue.ts';
import type { Test } from '../care/custody/test.ts';
import { testByCode } from '../care/custody/test-by-code.ts';
import { turnOf } from '../care/custody/turn.ts';
import type { Home } from '../care/home.ts';
import { factsIn, standing } from '../care/home.ts';
import type { BoxId, PersonId, RoundId } from '../care/ids.ts';
import type { Code } from '../care/kind.ts';
import { heldBy, isWithdrawn } from '../care/quality/held.ts';
import type { Refusal } from '../care/refusal.ts';
import { allow, refuse } from '../care/refusal.ts';
import { boxToShutAgain, inBox } from '../care/rounds/in-box.ts';
import type { Box, Round } from '../care/rounds/round.ts';
import { roundOf } from '../care/rounds/round.ts';
import { tallyOf } from '../care/rounds/tally.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';
import type { ReadCode } from './second-person.ts';
import { needsSecond, ruledOut, witnesses } from './second-person.ts';
import { malformed } from './take-swab/kit.ts';

/** The box being filled: the last one begun that nobody has shut. */
export const openBox = (round: Round): Box | undefined =>
  round.boxes.findLast((box) => box.closed === undefined);

/** One scan a bag, at the pack table. Only a sealed tube of this round goes in, and only once. */
export function packBag(
  home: Home,
  scan: ReadCode & { readonly round: RoundId },
  doing: Doing,
): Outcome {
  const round = roundOf(home, scan.round);
  if (round === undefined) return refuse({ reason: 'not-closed-yet' });
  const code = scan.code.trim() as Code;
  const test = testByCode(home, code);
  if (test?.turn === undefined) {
    const { kitKind } = round.planned.data;
    const slip = malformed(home, { kitKind, code: scan.code, on: today(home, doing) });
    return refuse(slip ?? { reason: 'code-unknown', code });
  }
  const refusal = packRefusal(home, round, test) ?? needsSecond(home, scan, doing);
  if (refusal !== undefined) return refuse(refusal);
  const box = openBox(round)?.id ?? (doing.draw() as BoxId);
  const start: NewFact[] =
    openBox(round) === undefined ? [{ kind: 'box.started', data: { box, round: round.id } }] : [];
  return allow([
    ...start,
    {
      kind: 'bag.packed',
      data: { turn: test.turn, test: test.id, box, code, how: scan.how, ...ruledOut(home, scan) },
      ...witnesses(doing, [scan.second]),
    },
  ]);
}

function packRefusal(home: Home, round: Round, test: Test): Refusal | undefined {
  const turn = test.turn === undefined ? undefined : turnOf(home, test.turn);
  if (turn === undefined) return { reason: 'code-unknown', code: test.code ?? '' };
  const about = { person: turn.person, test: test.id };
  if (test.spoiled !== undefined || isWithdrawn(home, test.id)) {
    const at = (test.spoiled ?? test.opened)?.at ?? turn.openedAt;
    return { reason: 'code-closed', code: test.code ?? '', person: turn.person, at };
  }
  const [held] = heldBy(home, test.id);
  if (held !== undefined) return { reason: 'held-by-finding', finding: held.id };
  if (turn.round !== round.id) return { reason: 'other-round', ...about };
  if (test.packed.length > 0) return { reason: 'already-packed', ...about };
  return test.sealed === undefined ? { reason: 'not-sealed', ...about } : undefined;
}

/** A bag that leaks, scanned at the pack table: its code is closed for ever. */
export function leakedAtPacking(
  home: Home,
  scan: ReadCode & { readonly round: RoundId },
  doing: Doing,
): Outcome {
  const { round } = scan;
  const code = scan.code.trim() as Code;
  const test = testByCode(home, code);
  const turn = test?.turn === undefined ? undefined : turnOf(home, test.turn);
  if (test === undefined || turn === undefined) return refuse({ reason: 'code-unknown', code });
  const { person } = turn;
  if (test.spoiled !== undefined)
    return refuse({ reason: 'code-closed', code, person, at: test.spoiled.at });
  if (turn.round !== round) return refuse({ reason: 'other-round', person, test: test.id });
  const unsure = needsSecond(home, scan, doing);
  if (unsure !== undefined) return refuse(unsure);
  return allow([
    {
      kind: 'kit.spoiled',
      data: { turn: turn.id, test: test.id, why: 'leak' },
      ...witnesses(doing, [scan.second]),
    },
  ]);
}

/** The box to shut next: one that others have packed into since it was shut, then the one being filled. */
export const boxToShut = (home: Home, round: Round): Box | undefined =>
  boxToShutAgain(home, round) ?? openBox(round);

/** The outer box is shut and wiped, on exactly the tests that are in it; anew where these changed. */
export function closeBox(
  home: Home,
  { round: id, wiped }: { round: RoundId; wiped: boolean },
): Outcome {
  const round = roundOf(home, id);
  const box = round && boxToShut(home, round);
  if (round === undefined || box === undefined) return refuse({ reason: 'box-empty' });
  const members = inBox(home, box.id)
    .map((test) => test.id)
    .sort();
  const before = standing(factsIn(home, 'box', box.id), 'box.closed').map((closed) => closed.id);
  // The last bag may have been taken out of a box that was shut: then it is shut on none.
  if (members.length + before.length === 0) return refuse({ reason: 'box-empty' });
  const replaces = before.length > 0 && { replaces: before };
  return allow([
    { kind: 'box.closed', data: { box: box.id, round: id, members, wiped, ...replaces } },
  ]);
}

/**
 * Closes the round, only if it tallies: every kit opened is packed or spoiled, nobody's turn is open
 * and no finding holds a tube. Otherwise says whose tube is missing.
 */
export function closeRound(home: Home, id: RoundId): Outcome {
  const round = roundOf(home, id);
  if (round === undefined) return refuse({ reason: 'not-closed-yet' });
  const tally = tallyOf(home, round);
  const [held] = tally.held;
  if (held !== undefined) return refuse({ reason: 'held-by-finding', finding: held.id });
  if (!tally.tallies) {
    return refuse({
      reason: 'does-not-tally',
      missing: [...tally.missing, ...tally.unfinished].map((test) => test.id),
      open: tally.openTurns.map((turn) => turn.id),
    });
  }
  const box = openBox(round);
  if (box !== undefined && tally.packed.some((test) => test.box === box.id)) {
    return refuse({ reason: 'box-not-closed' });
  }
  const sorted = (tests: readonly Test[]) => tests.map((test) => test.id).sort();
  const before = round.closings.map((closing) => closing.id);
  return allow([
    {
      kind: 'round.closed',
      data: {
        round: id,
        packed: sorted(tally.packed),
        spoiled: sorted(tally.spoiled),
        ...(before.length > 0 && { replaces: before }),
      },
    },
  ]);
}

/**
 * The courier is here early: what is packed goes now, everybody not yet swabbed moves to a second
 * round of the same day. Turns that are open stay where they are until they end.
 */
export function splitRound(
  home: Home,
  { round: id, courier }: { readonly round: RoundId; readonly courier: Round['courier'] },
  doing: Doing,
): Outcome {
  const round = roundOf(home, id);
  if (round === undefined) return refuse({ reason: 'not-closed-yet' });
  if (courier <= doing.now) return refuse({ reason: 'in-the-past', field: 'courier' });
  const begun = new Set(peopleBegun(home, round));
  const [stay, move] = [true, false].map((keep) =>
    round.people.filter(({ person }) => begun.has(person) === keep),
  );
  if (stay === undefined || move === undefined || move.length === 0)
    return refuse({ reason: 'nobody-chosen' });
  const next = doing.draw() as RoundId;
  const { replaces: _before, ...plan } = round.planned.data;
  return allow([
    {
      kind: 'round.listed',
      data: {
        round: id,
        people: stay,
        leftOff: [...round.leftOff],
        replaces: round.lists.map((list) => list.id),
      },
    },
    { kind: 'round.planned', data: { ...plan, round: next, courier } },
    { kind: 'round.listed', data: { round: next, people: move, leftOff: [] } },
  ]);
}

const peopleBegun = (home: Home, round: Round): PersonId[] =>
  round.turns.flatMap((id) => turnOf(home, id)?.person ?? []);
