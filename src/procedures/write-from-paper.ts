import type { NewFact } from '../care/catalogue.ts';
import type { SpoilReason, StopReason } from '../care/custody/facts.ts';
import type { Paper } from '../care/custody/paper.ts';
import type { Home } from '../care/home.ts';
import type { PersonId, RoundId, StaffId, TestId, TurnId } from '../care/ids.ts';
import type { Code } from '../care/kind.ts';
import type { Refusal } from '../care/refusal.ts';
import { allow, refuse } from '../care/refusal.ts';
import { roundOf } from '../care/rounds/round.ts';
import { memberOf } from '../care/staff/member.ts';
import { stockOf } from '../care/supplies/stock.ts';
import type { Instant } from '../care/time.ts';
import { dayOf } from '../care/time.ts';
import type { Doing, Outcome } from './doing.ts';
import type { ReadCode } from './second-person.ts';
import { needsSecond, ruledOut, witnesses } from './second-person.ts';
import { malformed } from './take-swab/kit.ts';
import { sitesIn } from './take-swab/swab.ts';

/** How a turn ended, as it stands on paper. `spoiled`: a kit was opened, and there is no tube to send. */
export const paperEnds = ['taken', 'declined', 'asleep', 'away', 'stopped', 'spoiled'] as const;
export type PaperEnd = (typeof paperEnds)[number];

export interface PaperKit {
  /** The spare label on the paper. */
  readonly record: ReadCode;
  /** What was read on tube and bag while typing it in; absent where they were not at hand. */
  readonly tube?: ReadCode;
  readonly bag?: ReadCode;
}

/** One person's turn as it was written on paper while no tablet worked. */
export interface PaperTurn {
  readonly round: RoundId;
  readonly person: PersonId;
  readonly swabber: StaffId;
  readonly recorder: StaffId;
  readonly wrote: StaffId;
  readonly happened: Instant;
  /** How the pair knew who it was, where the paper says so. */
  readonly knew: 'birthday' | 'face' | undefined;
  /** The paper says that they said or showed yes. */
  readonly saidYes: boolean;
  readonly end: PaperEnd;
  readonly kit?: PaperKit;
  readonly sites?: 'throat-and-nose' | 'nose-only';
  readonly taker?: 'staff' | 'person';
  readonly stop?: StopReason;
  readonly spoil?: SpoilReason;
}

/**
 * Types in a turn that was written on paper. It has happened: nothing that the bedside would stop
 * (training, another kit of that code, a no earlier on) is refused here. It is kept with the time and
 * hand of the paper, and what does not fit is found. Refused are slips of whoever types: a time to
 * come, or a code that no such kit has.
 */
export function writeFromPaper(home: Home, turn: PaperTurn, doing: Doing): Outcome {
  const refusal = slip(home, turn, doing);
  if (refusal !== undefined) return refuse(refusal);
  const { round, person, swabber, recorder, happened, wrote } = turn;
  const id = doing.draw() as TurnId;
  const on: On = { turn: id, paper: { happened, wrote } };
  return allow([
    { kind: 'turn.opened', data: { ...on, round, person, swabber, recorder } },
    ...asked(turn, on),
    ...kitFacts(home, turn, { on, doing }),
    ...(turn.end === 'stopped' ? [stopped(turn, on)] : []),
    { kind: 'turn.closed', data: { ...on, end: ENDS[turn.end] } },
  ]);
}

interface On {
  readonly turn: TurnId;
  readonly paper: Paper;
}

const ENDS = {
  taken: 'taken',
  declined: 'declined',
  asleep: 'not-now',
  away: 'not-now',
  stopped: 'stopped',
  spoiled: 'kit-fault',
} as const;

function slip(home: Home, turn: PaperTurn, doing: Doing): Refusal | undefined {
  const round = roundOf(home, turn.round);
  if (round === undefined) return { reason: 'unknown-person' };
  if (turn.happened > doing.now) return { reason: 'in-the-future', field: 'when' };
  for (const each of [turn.swabber, turn.recorder, turn.wrote])
    if (memberOf(home, each).role === undefined) return { reason: 'unknown-staff' };
  if (turn.end === 'taken' && turn.kit === undefined) return { reason: 'empty', field: 'record' };
  const { kitKind } = round.planned.data;
  const on = dayOf(turn.happened, home.service.zone);
  for (const read of readings(turn.kit)) {
    const wrong =
      malformed(home, { kitKind, code: read.code, on }) ?? needsSecond(home, read, doing);
    if (wrong !== undefined) return wrong;
  }
  return undefined;
}

const readings = (kit: PaperKit | undefined): ReadCode[] =>
  kit === undefined ? [] : [kit.record, kit.tube, kit.bag].flatMap((read) => read ?? []);

/** Who they were, and what they said: only as far as the paper says it. */
function asked(turn: PaperTurn, on: On): NewFact[] {
  const facts: NewFact[] = [];
  const { knew: way, person: chosen } = turn;
  if (way !== undefined) facts.push({ kind: 'identity.established', data: { ...on, way, chosen } });
  const answer = answerOn(turn);
  if (answer !== undefined) facts.push({ kind: 'willingness.seen', data: { ...on, answer } });
  return facts;
}

function answerOn({ end, saidYes }: PaperTurn): 'yes' | 'no' | 'asleep' | 'away' | undefined {
  if (end === 'declined') return 'no';
  if (end === 'asleep' || end === 'away') return end;
  return saidYes ? 'yes' : undefined;
}

function stopped({ stop }: PaperTurn, on: On): NewFact {
  return { kind: 'turn.stopped', data: { ...on, ...(stop !== undefined && { why: stop }) } };
}

function kitFacts(
  home: Home,
  turn: PaperTurn,
  { on, doing }: { readonly on: On; readonly doing: Doing },
): NewFact[] {
  const { kit, end } = turn;
  if (kit === undefined) return [];
  const kitKind = roundOf(home, turn.round)?.planned.data.kitKind ?? '';
  const known = stockOf(home, kitKind).lotOfCode.get(codeOf(kit.record));
  const ids = { ...on, test: doing.draw() as TestId };
  const opened: NewFact = {
    kind: 'kit.opened',
    data: {
      ...{ ...ids, ...coded(home, kit.record), kitKind },
      ...(known && { lot: known.lot, expires: known.expires }),
    },
    ...witnesses(doing, [kit.record.second]),
  };
  const labels = (['tube', 'bag'] as const).flatMap((place): NewFact[] => {
    const read = kit[place];
    if (read === undefined) return [];
    const data = { ...ids, place, ...coded(home, read) };
    return [{ kind: 'label.read', data, ...witnesses(doing, [read.second]) }];
  });
  return [opened, ...labels, ...(end === 'taken' ? sealed(turn, ids) : [spoiled(turn, ids)])];
}

const codeOf = (read: ReadCode): Code => read.code.trim() as Code;
const coded = (home: Home, read: ReadCode) => ({
  ...{ code: codeOf(read), how: read.how },
  ...ruledOut(home, read),
});

type Ids = On & { readonly test: TestId };

function sealed({ sites, taker = 'staff' }: PaperTurn, ids: Ids): NewFact[] {
  const taken = sitesIn(sites ?? 'throat-and-nose').map((site) => ({ site }));
  return [
    { kind: 'swab.taken', data: { ...ids, taker, sites: taken } },
    { kind: 'tube.closed', data: ids },
    { kind: 'tube.sealed', data: ids },
  ];
}

const spoiled = ({ end, spoil }: PaperTurn, ids: Ids): NewFact => ({
  kind: 'kit.spoiled',
  data: { ...ids, why: end === 'stopped' ? 'stopped' : (spoil ?? 'contents-wrong') },
});
