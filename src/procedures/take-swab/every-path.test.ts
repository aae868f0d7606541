import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../../test/trial/home.ts';
import { kitCode, plan, touch } from '../../../test/trial/round.ts';
import type { Fact } from '../../care/catalogue.ts';
import { stepOf, testInHand } from '../../care/custody/step.ts';
import { testOf } from '../../care/custody/test.ts';
import type { Turn } from '../../care/custody/turn.ts';
import { turnOf } from '../../care/custody/turn.ts';
import type { PersonId, StaffId, TurnId } from '../../care/ids.ts';
import type { Day } from '../../care/time.ts';
import { receiveKits } from '../supplies.ts';
import type { Touch } from './touch.ts';

const pair = { swabber: 'pia' as StaffId, recorder: 'jonah' as StaffId };
const other = { swabber: 'wystan' as StaffId, recorder: 'jonah' as StaffId };

/** Every touch there is, with the choices that matter; `code` is filled in when it is made. */
const TOUCHES: readonly Exclude<Touch, { do: 'start' }>[] = [
  { do: 'identify', chosen: 'corwen' as PersonId },
  { do: 'identify', chosen: 'tamsin' as PersonId },
  { do: 'identify', chosen: 'none' },
  ...(['yes', 'no', 'unsure', 'asleep', 'away'] as const).map(
    (answer) => ({ do: 'willing', answer }) as const,
  ),
  { do: 'open-kit', code: 'next', how: 'scanned' },
  { do: 'open-kit', code: 'next', how: 'typed-twice' },
  { do: 'open-kit', code: 'next', how: 'typed-twice', second: 'pia' as StaffId },
  { do: 'contents-right' },
  { do: 'read-label', code: 'same', how: 'scanned' },
  { do: 'read-label', code: 'same', how: 'typed-twice' },
  { do: 'read-label', code: 'same', how: 'typed-twice', second: 'pia' as StaffId },
  { do: 'read-label', code: 'other', how: 'scanned' },
  { do: 'choose-way', sites: 'nose-only' },
  { do: 'start-site' },
  { do: 'next-site', ms: 10_000 },
  { do: 'out', ms: 10_000 },
  { do: 'out', ms: 10_000, short: 'asked-to-finish' },
  { do: 'lid-dry' },
  { do: 'sealed' },
  { do: 'kit-fault', why: 'contents-wrong' },
  { do: 'kit-fault', why: 'leak' },
  { do: 'kit-fault', why: 'asked-not-to-send' },
  { do: 'stop' },
  { do: 'stop-mistaken' },
  { do: 'explain-stop', why: 'turned-away' },
  { do: 'interrupt', why: 'alarm' },
  ...(['none-open', 'lid-was-on', 'kept-safe', 'left-open'] as const).flatMap((tube) => [
    { do: 'resume', tube, ...pair } as const,
    { do: 'resume', tube, ...other } as const,
  ]),
  { do: 'finish' },
];

interface Played {
  readonly trial: Trial;
  readonly turn: TurnId;
}

/** Kits without a check character, each with a near twin in the box: typing any of them is a risk. */
const uncheckedPolicy = demoPolicy((policy) => {
  const [kit] = policy.kits;
  if (kit !== undefined) kit.codeScheme = 'none';
});
const delivery = {
  ...{ kitKind: 'single-swab', lot: 'L1', expires: '2026-12-31' as Day, count: 12 },
  codes: [1, 2, 3, 4, 91, 92].map((number) => kitCode(number).replace(/.$/, 'X')),
};

/** Plays a path of touches from the opened turn; every one of them is allowed. */
function play(path: readonly number[]): Played {
  const trial = new Trial({ policy: uncheckedPolicy });
  for (const name of ['Pia', 'Jonah', 'Wystan']) trial.staff(name);
  const corwen = trial.person('Corwen', '1951-03-03');
  trial.person('Tamsin', '1962-11-20');
  const round = plan(trial, [corwen]);
  trial.must(receiveKits(trial.home, delivery, trial.doing));
  const [opened] = trial.must(touch(trial, { do: 'start', round, person: corwen, ...pair }));
  if (opened?.kind !== 'turn.opened') throw new Error('no turn');
  const { turn } = opened.data;
  for (const index of path) trial.must(attempt({ trial, turn }, index));
  return { trial, turn };
}

const attempt = ({ trial, turn }: Played, index: number) =>
  touch(trial, { ...fill(trial, turn, TOUCHES[index] as Touch), turn });

/** Which touches are allowed here. Deciding changes nothing, so all are asked of one state. */
const allowed = (played: Played): number[] =>
  TOUCHES.map((_, index) => index).filter((index) => attempt(played, index).ok);

function fill(trial: Trial, id: TurnId, given: Touch): Touch {
  if (given.do !== 'open-kit' && given.do !== 'read-label') return given;
  const turn = turnOf(trial.home, id) as Turn;
  const opened = turn.tests.length;
  const code = { next: kitCode(opened + 1), same: kitCode(opened), other: kitCode(90 + opened) }[
    given.code
  ];
  return { ...given, code: code as string };
}

/** What a state is to the machine: two paths that meet here have the same future. */
function signature({ trial, turn: id }: Played): string {
  const turn = turnOf(trial.home, id) as Turn;
  const test = testInHand(trial.home, turn);
  return JSON.stringify([
    stepOf(turn, test),
    turn.needsWho,
    turn.needsWilling,
    turn.stop !== undefined,
    turn.stopWhy !== undefined,
    turn.pair.swabber,
    test?.stage,
    test?.way?.data.sites,
    test?.running?.data.site,
    Math.min(2, turn.begun.length),
    Math.min(2, turn.tests.length),
    turn.closed?.data.end,
  ]);
}

function explore(): Map<string, Played> {
  const reached = new Map<string, Played>();
  const queue: number[][] = [[]];
  for (let path = queue.shift(); path !== undefined; path = queue.shift()) {
    const played = play(path);
    const key = signature(played);
    if (reached.has(key)) continue;
    reached.set(key, played);
    // Kits opened without end add nothing new: two are enough to meet every rule about tries.
    if ((turnOf(played.trial.home, played.turn)?.tests.length ?? 0) > 2) continue;
    for (const next of allowed(played)) queue.push([...path, next]);
  }
  return reached;
}

/** The swab sites started though the last word of the person was not yes, told from the bare facts. */
function begunWithoutYes(facts: readonly Fact[]): Fact[] {
  let yes = false;
  return facts.filter((fact) => {
    if (fact.kind === 'willingness.seen') yes = fact.data.answer === 'yes';
    if (fact.kind === 'turn.stopped' || fact.kind === 'kit.spoiled')
      yes = fact.kind === 'kit.spoiled' && yes && !spoiledBegun(facts, fact);
    return fact.kind === 'site.started' && !yes;
  });
}
const spoiledBegun = (facts: readonly Fact[], spoiled: Fact): boolean =>
  facts.some(
    (fact) =>
      fact.kind === 'site.started' &&
      spoiled.kind === 'kit.spoiled' &&
      fact.data.test === spoiled.data.test,
  );

describe('every path through a turn', () => {
  const states = explore();

  it('meets every step', () => {
    const steps = new Set([...states.keys()].map((key) => (JSON.parse(key) as string[])[0]));
    expect([...steps].sort()).toEqual([
      'bag',
      'check',
      'ended',
      'interrupted',
      'kit',
      'label-bag',
      'label-tube',
      'lid',
      'ready',
      'settled',
      'stopped',
      'swab',
      'who',
      'willing',
    ]);
    expect(states.size).toBeGreaterThan(150);
  });

  it('never begins a swab unless the last word was yes', () => {
    for (const { trial } of states.values()) expect(begunWithoutYes(trial.facts)).toEqual([]);
  });

  it('takes a typed code with a near twin only from two people, wherever a scan would do', () => {
    for (const [key, played] of states) {
      const may = new Set(allowed(played));
      TOUCHES.forEach((touched, index) => {
        if (touched.do !== 'open-kit' && touched.do !== 'read-label') return;
        if (touched.how === 'scanned' || touched.code === 'other') return;
        const byScan = TOUCHES.findIndex(
          (other) =>
            other.do === touched.do && other.code === touched.code && other.how === 'scanned',
        );
        const expected = touched.second === undefined ? false : may.has(byScan);
        expect(may.has(index), `${key} ${JSON.stringify(touched)}`).toBe(expected);
      });
    }
  });

  it('never has two kits open, and an ended turn leaves every kit sealed or spoiled', () => {
    for (const { trial, turn: id } of states.values()) {
      const turn = turnOf(trial.home, id) as Turn;
      const open = turn.tests
        .map((test) => testOf(trial.home, test))
        .filter((test) => test.spoiled === undefined);
      expect(open.length).toBeLessThanOrEqual(1);
      if (turn.closed !== undefined) {
        expect(open.every((test) => test.stage === 'sealed')).toBe(true);
        expect(turn.closed.data.end === 'taken').toBe(open.length === 1);
      }
    }
  });

  it('always lets the person stop until the turn has ended, and always has a way out', () => {
    for (const [key, played] of states) {
      const [step] = JSON.parse(key) as [string];
      if (step === 'ended') continue;
      const ways = allowed(played).map((index) => TOUCHES[index]?.do);
      expect(ways.length, key).toBeGreaterThan(0);
      expect(ways, key).toContain('stop');
    }
  });

  it('never has a third swab begun in a day', () => {
    for (const { trial, turn } of states.values()) {
      expect(turnOf(trial.home, turn)?.begun.length).toBeLessThanOrEqual(2);
    }
  });
});
