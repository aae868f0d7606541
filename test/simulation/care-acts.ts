import { isOpen } from '../../src/care/custody/person-turns.ts';
import { stepOf, testInHand } from '../../src/care/custody/step.ts';
import { turnOf } from '../../src/care/custody/turn.ts';
import type { Home } from '../../src/care/home.ts';
import { keysOn } from '../../src/care/home.ts';
import type { PersonId, RoundId, StaffId, TestId, TurnId } from '../../src/care/ids.ts';
import { isOpenFinding } from '../../src/care/quality/finding.ts';
import { findings } from '../../src/care/quality/findings.ts';
import { accountsOf, verdictsFor } from '../../src/care/quality/verdicts.ts';
import { inBox } from '../../src/care/rounds/in-box.ts';
import { roundOf } from '../../src/care/rounds/round.ts';
import type { Instant } from '../../src/care/time.ts';
import { dayOf } from '../../src/care/time.ts';
import type { Doing, Outcome } from '../../src/procedures/doing.ts';
import { handOver } from '../../src/procedures/hand-over.ts';
import { closeBox, closeRound, packBag } from '../../src/procedures/pack.ts';
import { recordResult, testNamed } from '../../src/procedures/record-result.ts';
import { register } from '../../src/procedures/register.ts';
import { settleFinding } from '../../src/procedures/settle-finding.ts';
import { decideTouch } from '../../src/procedures/take-swab/decide.ts';
import type { Touch } from '../../src/procedures/take-swab/touch.ts';
import { kitCode } from '../trial/round.ts';
import { draftOf, PEOPLE, ROUND, SENIOR, STAFF } from './care-begin.ts';
import type { Chance } from './chance.ts';
import type { Act, Hands } from './model.ts';

/** Few codes and references for many tablets, so that they meet. */
const CODES = 14;
const REFERENCES = 6;
const FATES = ['none-open', 'lid-was-on', 'kept-safe', 'left-open'] as const;
const kinds = [
  ['turn', 60],
  ['pack', 8],
  ['close-box', 2],
  ['close-round', 1],
  ['hand-over', 1],
  ['register', 8],
  ['result', 4],
  ['settle', 4],
  ['describe', 4],
] as const;

/** Somebody who is refused tries something else, so often. */
const TRIES = 12;

/** One touch of somebody at this tablet, decided by the real procedures on what it shows. */
export function act(home: Home, chance: Chance, hands: Hands): Act | undefined {
  for (let n = 0; n < TRIES; n++) {
    const done = tryOnce(home, chance, hands);
    if (done) return done;
  }
  return undefined;
}

function tryOnce(home: Home, chance: Chance, { now, device }: Hands): Act | undefined {
  const what = chance.weighted(kinds);
  const doing: Doing = {
    now: new Date(now).toISOString() as Instant,
    by: what === 'settle' ? SENIOR : (chance.one(STAFF) ?? SENIOR),
    device,
    draw: () => `x${String(chance.below(1e9)).padStart(9, '0')}`,
  };
  const outcome = attempt(home, what, { chance, doing });
  if (outcome?.ok !== true || outcome.value.length === 0) return undefined;
  const others = new Set(outcome.value.flatMap((fact) => fact.with ?? []));
  return {
    drafts: outcome.value.map(draftOf),
    by: doing.by,
    ...(others.size > 0 && { with: [...others].sort() }),
  };
}

interface At {
  readonly chance: Chance;
  readonly doing: Doing;
}

function attempt(home: Home, what: (typeof kinds)[number][0], at: At): Outcome | undefined {
  const { chance, doing } = at;
  const code = kitCode(1 + chance.below(CODES));
  const scan = { round: ROUND, code, how: 'scanned' as const };
  switch (what) {
    case 'turn':
      return bedside(home, at);
    case 'pack':
      return packBag(home, scan, doing);
    case 'close-box':
      return closeBox(home, { round: ROUND, wiped: true });
    case 'close-round':
      return roundOf(home, ROUND)?.boxes.length === 0 ? undefined : closeRound(home, ROUND);
    case 'hand-over':
      return hand(home, ROUND);
    case 'register': {
      const test = chance.one([...keysOn(home, 'test')]);
      const reference = `R-${chance.below(REFERENCES)}`;
      return test === undefined
        ? undefined
        : register(home, { test: test as TestId, reference, amend: chance.happens(0.3) }, doing);
    }
    case 'result':
      return result(home, code, at);
    case 'settle':
      return settle(home, at);
    case 'describe': {
      const n = chance.below(PEOPLE.length);
      // What was erased is asked again: without birth dates nobody can be swabbed.
      const [about, value] = chance.happens(0.7)
        ? (['born', `${1940 + n}-06-02`] as const)
        : (['called', `Name ${chance.below(1e9)}`] as const);
      const data = { person: PEOPLE[n] ?? ('' as PersonId), about };
      return { ok: true, value: [{ kind: 'person.described', data, private: { value } }] };
    }
  }
}

/** A turn of this tablet goes on, mostly the straightforward way; or one begins. */
function bedside(home: Home, { chance, doing }: At): Outcome | undefined {
  const own = [...keysOn(home, 'turn')]
    .flatMap((id) => turnOf(home, id as TurnId) ?? [])
    .filter((turn) => isOpen(turn) && turn.device === doing.device);
  const turn = chance.one(own);
  if (turn === undefined) {
    const [swabber, recorder] = [chance.one(STAFF), chance.one(STAFF)];
    const person = chance.one(PEOPLE);
    if (!swabber || !recorder || !person) return undefined;
    const start = { do: 'start', round: ROUND, person, swabber, recorder } as const;
    return decideTouch(home, { ...start, changedMind: chance.happens(0.5) }, doing);
  }
  const test = testInHand(home, turn);
  const step = stepOf(turn, test);
  const code = (chance.happens(0.9) ? test?.code : undefined) ?? kitCode(1 + chance.below(CODES));
  const pair = turn.pair as { swabber: StaffId; recorder: StaffId };
  const usual: Readonly<Record<string, Touch>> = {
    who: { do: 'identify', chosen: chance.happens(0.95) ? turn.person : 'none' },
    willing: { do: 'willing', answer: chance.happens(0.85) ? 'yes' : 'no' },
    kit: { do: 'open-kit', code, how: 'scanned' },
    check: { do: 'contents-right' },
    'label-tube': { do: 'read-label', code, how: 'scanned' },
    'label-bag': { do: 'read-label', code, how: 'scanned' },
    ready: { do: 'start-site' },
    swab: chance.happens(0.5)
      ? { do: 'next-site', ms: 10_500 }
      : { do: 'out', ms: 12_000, short: 'asked-to-finish' },
    lid: { do: 'lid-dry' },
    bag: chance.happens(0.9) ? { do: 'sealed' } : { do: 'kit-fault', why: 'leak' },
    settled: { do: 'finish' },
    stopped: { do: 'finish' },
    interrupted: { do: 'resume', tube: chance.one(FATES) ?? 'none-open', ...pair },
  };
  const odd: readonly Touch[] = [
    { do: 'stop' },
    { do: 'interrupt', why: 'alarm' },
    { do: 'finish' },
    { do: 'kit-fault', why: 'leak' },
  ];
  const touch = chance.happens(0.93) ? usual[step] : chance.one(odd);
  return touch && decideTouch(home, { ...touch, turn: turn.id }, doing);
}

function hand(home: Home, id: RoundId): Outcome | undefined {
  const box = roundOf(home, id)?.boxes.find(({ closed }) => closed !== undefined);
  if (box === undefined) return undefined;
  const count = inBox(home, box.id).length;
  return handOver(home, { round: id, box: box.id, courier: 'Van', count, seal: 'S1' });
}

/** Mostly for a code that stands on a test here. */
function result(home: Home, code: string, { chance, doing }: At): Outcome | undefined {
  if (chance.happens(0.9) && testNamed(home, code) === undefined) return undefined;
  const reported = dayOf(doing.now, home.service.zone);
  const outcome = chance.one(['positive', 'negative', 'void'] as const) ?? 'void';
  const given = { code, how: 'scanned' as const, outcome, reported };
  const born = `${1940 + chance.below(PEOPLE.length)}-06-02`;
  const second = { is: 'born' as const, value: born };
  const how = { corrects: chance.happens(0.3), doubtful: chance.happens(0.3) };
  return recordResult(home, { ...given, second, ...how }, doing);
}

function settle(home: Home, { chance, doing }: At): Outcome | undefined {
  const all = findings(home);
  const found = chance.one(
    chance.happens(0.8) ? all.filter((one) => isOpenFinding(home, one)) : all,
  );
  if (found === undefined) return undefined;
  const verdict = chance.one(verdictsFor(found.kind));
  const keeps = chance.one(accountsOf(home, found))?.keeps;
  return verdict === undefined
    ? undefined
    : settleFinding(
        home,
        {
          ...{ finding: found.id, seen: found.members, verdict, reason: 'Looked at together.' },
          ...(keeps !== undefined && { keeps }),
        },
        doing,
      );
}
