import type { Home } from '../src/care/home.ts';
import type { PersonId, RoundId, StaffId, TestId, TurnId } from '../src/care/ids.ts';
import type { Code } from '../src/care/kind.ts';
import { personOf } from '../src/care/people/person.ts';
import { actionsFor } from '../src/care/results/actions.ts';
import { readinessOf } from '../src/care/rounds/readiness.ts';
import { roundOf } from '../src/care/rounds/round.ts';
import { tallyOf } from '../src/care/rounds/tally.ts';
import { planOf } from '../src/care/support/plan.ts';
import type { Day } from '../src/care/time.ts';
import { after, MINUTE, momentOf } from '../src/care/time.ts';
import { handOver } from '../src/procedures/hand-over.ts';
import { closeBox, closeRound, packBag } from '../src/procedures/pack.ts';
import { planRound } from '../src/procedures/plan-round.ts';
import { doAction, recordResult } from '../src/procedures/record-result.ts';
import { register } from '../src/procedures/register.ts';
import { decideTouch } from '../src/procedures/take-swab/decide.ts';
import type { Touch } from '../src/procedures/take-swab/touch.ts';
import type { Chance } from './chance.ts';
import type { Pen } from './pen.ts';

interface Past {
  readonly on: Day;
  readonly people: readonly PersonId[];
  /** Due, and swabbed another day. */
  readonly leftOff: readonly PersonId[];
  readonly chance: Chance;
  readonly next: () => Code;
  /** How a turn ended, where it was not simply taken. */
  readonly ends: Readonly<Record<string, 'declined' | 'stopped' | 'leak'>>;
}

const pair = { swabber: 'piadell004' as StaffId, recorder: 'jonahmarsh' as StaffId };

/** A round of the past, from plan to registering, through the same procedures as today's. */
export function pastRound(pen: Pen, past: Past): RoundId {
  const { zone } = pen.home.service;
  pen.now = momentOf(past.on, '09:10', zone);
  pen.by = pair.recorder;
  const people = past.people.filter(
    (person) =>
      readinessOf(pen.home, person, { test: 'respiratory', on: past.on }).holds.length === 0,
  );
  const planned = pen.do(
    planRound(
      pen.home,
      {
        ...pair,
        ...{ day: past.on, test: 'respiratory', kitKind: 'single-swab', packMinutes: 20 },
        courier: momentOf(past.on, '14:30', zone),
        people,
        leftOff: past.leftOff.map((person) => ({ person, why: 'another-day' as const })),
      },
      pen.doing,
    ),
  )[0];
  if (planned?.kind !== 'round.planned') throw new Error('no round');
  const { round } = planned.data;
  for (const person of people) turn(pen, round, person, past);
  send(pen, round, past.on);
  return round;
}

function turn(pen: Pen, round: RoundId, person: PersonId, past: Past): void {
  const { chance } = past;
  pen.now = after(pen.now, chance.whole(2, 5) * MINUTE);
  const opened = touch(pen, { do: 'start', round, person, ...pair })[0];
  if (opened?.kind !== 'turn.opened') throw new Error('no turn');
  const id = opened.data.turn;
  const say = (given: Touch) => touch(pen, given, id);
  say({ do: 'identify', chosen: person });
  const end = past.ends[person];
  if (end === 'declined') {
    say({ do: 'willing', answer: 'no' });
    return;
  }
  say({ do: 'willing', answer: 'yes' });
  if (end === 'leak') {
    kit(pen, id, { person, past, leak: true });
    say({ do: 'willing', answer: 'yes' });
  }
  kit(pen, id, { person, past, stop: end === 'stopped' });
  say({ do: 'finish', mood: end === 'stopped' ? 'uneasy' : 'calm' });
}

function kit(
  pen: Pen,
  id: TurnId,
  { person, past, leak, stop }: { person: PersonId; past: Past; leak?: boolean; stop?: boolean },
): void {
  const code = past.next();
  const say = (given: Touch) => touch(pen, given, id);
  const dial = () => {
    const ms = past.chance.whole(10_000, 14_500);
    pen.now = after(pen.now, ms);
    return ms;
  };
  say({ do: 'open-kit', code, how: 'scanned' });
  say({ do: 'contents-right' });
  say({ do: 'read-label', code, how: 'scanned' });
  say({ do: 'read-label', code, how: 'scanned' });
  if (planOf(pen.home, person).selfSwab) say({ do: 'choose-way', self: true });
  say({ do: 'start-site' });
  if (stop === true) {
    say({ do: 'stop' });
    say({ do: 'explain-stop', why: 'pushed-away' });
    return;
  }
  say({ do: 'next-site', ms: dial() });
  say({ do: 'out', ms: dial() });
  if (leak === true) {
    say({ do: 'kit-fault', why: 'leak' });
    return;
  }
  say({ do: 'lid-dry' });
  say({ do: 'sealed' });
}

const touch = (pen: Pen, given: Touch, turn?: TurnId) =>
  pen.do(decideTouch(pen.home, turn === undefined ? given : { ...given, turn }, pen.doing));

/** Packed, closed, handed over and registered the same day. */
function send(pen: Pen, round: RoundId, on: Day): void {
  pen.now = after(pen.now, 10 * MINUTE);
  for (const { code } of sealed(pen.home, round))
    pen.do(packBag(pen.home, { round, code, how: 'scanned' }, pen.doing));
  pen.do(closeBox(pen.home, { round, wiped: true }));
  pen.do(closeRound(pen.home, round));
  pen.now = momentOf(on, '14:24', pen.home.service.zone);
  const [box] = roundOf(pen.home, round)?.boxes ?? [];
  if (box === undefined) return;
  const count = box.closed?.data.members.length ?? 0;
  const seal = `S${pen.doing.draw().slice(0, 5).toUpperCase()}`;
  pen.do(handOver(pen.home, { round, box: box.id, courier: 'The morning van', count, seal }));
  pen.now = momentOf(on, '15:05', pen.home.service.zone);
  for (const { test } of packed(pen.home, round)) {
    const reference = `R-${pen.doing.draw().slice(0, 8).toUpperCase()}`;
    pen.do(register(pen.home, { test, reference }, pen.doing));
  }
}

interface Tube {
  readonly test: TestId;
  readonly code: Code;
}
const tubes = (home: Home, round: RoundId, which: 'missing' | 'packed'): Tube[] => {
  const found = roundOf(home, round);
  if (found === undefined) return [];
  return tallyOf(home, found)[which].flatMap(({ id, code }) =>
    code === undefined ? [] : [{ test: id, code }],
  );
};
const sealed = (home: Home, round: RoundId) => tubes(home, round, 'missing');
const packed = (home: Home, round: RoundId) => tubes(home, round, 'packed');

/** Everybody's result on one morning: negative, told to the person the same day. */
export function pastResults(pen: Pen, round: RoundId, on: Day): void {
  pen.now = momentOf(on, '11:40', pen.home.service.zone);
  pen.by = pair.recorder;
  for (const { test, code } of packed(pen.home, round)) {
    const person = roundPerson(pen.home, round, test);
    const born = person === undefined ? '' : (personOf(pen.home, person).born ?? '');
    pen.do(
      recordResult(
        pen.home,
        {
          code,
          how: 'scanned',
          outcome: 'negative',
          reported: on,
          second: { is: 'born', value: born },
        },
        pen.doing,
      ),
    );
    for (const { kind } of actionsFor(pen.home, test)) {
      pen.do(doAction(pen.home, { test, action: kind, outcome: 'done', note: '' }));
    }
  }
}

function roundPerson(home: Home, round: RoundId, test: TestId): PersonId | undefined {
  for (const fact of home.known.values()) {
    if (fact.kind !== 'turn.opened' || fact.data.round !== round) continue;
    const theirs = [...home.known.values()].some(
      (other) =>
        other.kind === 'kit.opened' &&
        other.data.test === test &&
        other.data.turn === fact.data.turn,
    );
    if (theirs) return fact.data.person;
  }
  return undefined;
}
