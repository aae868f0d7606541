import { isOpen } from '../custody/person-turns.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import { housemates } from '../people/person.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Policy } from '../policy/policy.ts';
import type { RuleId } from '../policy/rules.ts';
import { practiceDueOn } from '../practice/due.ts';
import { isOpenFinding, standingOf } from '../quality/finding.ts';
import { findings } from '../quality/findings.ts';
import { actionsFor, isSettled } from '../results/actions.ts';
import { registrationOf } from '../results/outcome.ts';
import { tray } from '../results/tray.ts';
import { registerBy, waitingFor } from '../results/waiting.ts';
import type { DueLine, Reason } from '../rounds/due.ts';
import { dueOn } from '../rounds/due.ts';
import type { Swab } from '../rounds/history.ts';
import { swabsWithin, takenOutInRound } from '../rounds/history.ts';
import { readinessOf } from '../rounds/readiness.ts';
import type { Round } from '../rounds/round.ts';
import { rounds } from '../rounds/round.ts';
import { tallyOf } from '../rounds/tally.ts';
import { stockOf, usable } from '../supplies/stock.ts';
import type { Day, Instant } from '../time.ts';
import { addDays, after, dayOf, HOUR } from '../time.ts';
import type { Work, WorkKind } from './work.ts';

/** Swabs older than this with their result acted on are no longer anybody's work. */
const LOOK_BACK_DAYS = 120;

/**
 * What needs somebody, most pressing first: what cannot wait for a person's safety, what spoils by
 * waiting, what belongs to today, then what is coming. One list, the same for everybody.
 */
export function workNow(home: Home, now: Instant): Work[] {
  const today = dayOf(now, home.service.zone);
  const { policy, confirmed } = policyOn(home, today);
  const recent = rounds(home).filter(
    (round) => round.planned.data.day >= addDays(today, -LOOK_BACK_DAYS),
  );
  const swabs = housematesAndLeavers(home, recent);
  const at = { home, now, today, policy };
  const all: Work[] = [
    ...swabs.flatMap((swab) => actionWork(at, swab)),
    ...recent
      .flatMap((round) => takenOutInRound(home, round))
      .flatMap((swab) => actionWork(at, swab)),
    ...findings(home)
      .filter((found) => isOpenFinding(home, found))
      .map((found) => ({
        work: 'settle' as const,
        finding: found,
        standing: standingOf(home, found),
      })),
    ...inTray(home),
    ...recent.flatMap((round) => openTurns(home, round)),
    ...recent.flatMap((round) => notCollected(at, round)),
    ...swabs.flatMap((swab) => toRegister(at, swab)),
    ...swabs.flatMap((swab) => toChase(at, swab)),
    ...recent
      .filter((round) => round.planned.data.day <= today)
      .flatMap((round) => inHand(home, round)),
    ...dueWork(at, recent),
    ...practiceDueOn(home, today).map((due) => ({ work: 'practice' as const, due })),
    ...kitsExpire(at),
    ...(confirmed === undefined ? [{ work: 'confirm-policy' as const }] : []),
  ];
  return all.sort((a, b) => pressing(a) - pressing(b));
}

interface At {
  readonly home: Home;
  readonly now: Instant;
  readonly today: Day;
  readonly policy: Policy;
}

/** Swabs of the rounds looked at, those of people who have left included: results still come. */
function housematesAndLeavers(home: Home, recent: readonly Round[]): Swab[] {
  const people = new Set(housemates(home).map((person) => person.id));
  for (const round of recent) {
    for (const id of round.turns) {
      const person = turnOf(home, id)?.person;
      if (person !== undefined) people.add(person);
    }
  }
  const inside = new Map(recent.map((round) => [round.id, round]));
  return [...people].flatMap((person) => swabsWithin(home, person, inside));
}

const ORDER: readonly WorkKind[] = [
  'act',
  'settle',
  'tray',
  'turn-open',
  'not-collected',
  'register',
  'chase',
  'round',
  'held',
  'due',
  'practice',
  'kits-expire',
  'confirm-policy',
];

/** Kind decides, but what is late comes before what is not, and calm actions after today's rounds. */
function pressing(work: Work): number {
  const rank = 10 * ORDER.indexOf(work.work);
  switch (work.work) {
    case 'act':
      return work.late || URGENT.has(work.action.outcome) ? rank : 65;
    case 'register':
      return work.late ? 5 : rank;
    default:
      return rank;
  }
}
const URGENT = new Set(['positive', 'withdrawn']);

function actionWork({ home, now }: At, swab: Swab): Work[] {
  return actionsFor(home, swab.test.id)
    .filter((action) => !isSettled(action))
    .map((action) => ({
      work: 'act' as const,
      action,
      person: swab.turn.person,
      late: now > action.due,
      who: action.named?.data.who,
    }));
}

/** Reports that fit nobody yet: one line, however many. */
function inTray(home: Home): Work[] {
  const waiting = tray(home);
  return waiting.length === 0 ? [] : [{ work: 'tray', waiting }];
}

const openTurns = (home: Home, round: Round): Work[] =>
  round.turns
    .flatMap((id) => turnOf(home, id) ?? [])
    .filter(isOpen)
    .map((turn) => ({ work: 'turn-open' as const, turn }));

/** Packed tubes that nobody has taken away. */
function notCollected({ home, now, policy }: At, round: Round): Work[] {
  const handed = new Set(round.boxes.filter((box) => box.handed.length > 0).map((box) => box.id));
  const waiting = tallyOf(home, round).packed.filter(
    (test) => test.box !== undefined && !handed.has(test.box),
  );
  const oldest = waiting.flatMap((test) => test.taken?.at ?? []).sort()[0];
  if (oldest === undefined) return [];
  const missed =
    round.missed.some((fact) => fact.data.due === round.courier) || now > round.courier;
  const kit = policy.kits.find((each) => each.id === round.planned.data.kitKind);
  const keepsUntil = after(oldest, (kit?.storage.hours ?? 72) * HOUR);
  return [{ work: 'not-collected', round, courierDue: round.courier, missed, keepsUntil }];
}

function toRegister({ home, today }: At, swab: Swab): Work[] {
  const registration = registrationOf(home, swab.test.id);
  if (registration.registered !== undefined || swab.test.packed.length === 0) return [];
  if (swab.outcome.state === 'known' || swab.outcome.state === 'withdrawn') return [];
  return [{ work: 'register', swab, registration, late: registerBy(home, swab) < today }];
}

function toChase({ home, now, policy }: At, swab: Swab): Work[] {
  const waiting = waitingFor(home, swab, { now, policy });
  if (waiting?.late !== true) return [];
  if (waiting.quietUntil !== undefined && now < waiting.quietUntil) return [];
  return [{ work: 'chase', waiting }];
}

function inHand(home: Home, round: Round): Work[] {
  if (round.closings.length > 0) return [];
  const tally = tallyOf(home, round);
  return [{ work: 'round', round, tally }];
}

function dueWork(at: At, recent: readonly Round[]): Work[] {
  const { home, now, today, policy } = at;
  const todays = recent.filter((round) => round.planned.data.day === today);
  return policy.tests.flatMap((test) => {
    const rounds = todays.filter((round) => round.planned.data.test === test.id);
    return dueOn(home, { on: today, test: test.id, now })
      .filter((line) => line.excluded === undefined)
      .flatMap((line): Work[] => {
        const { holds } = readinessOf(home, line.person.id, { test: test.id, on: today });
        if (holds.length > 0) return [{ work: 'held', line, holds }];
        return inHandToday(home, line, rounds) ? [] : [{ work: 'due', line }];
      });
  });
}

/**
 * Whether a round of today sees to somebody. One that is over has asked for the day; only what came
 * back, or what was not known yet when it was closed, may ask again.
 */
function inHandToday(home: Home, { person, reasons }: DueLine, todays: readonly Round[]): boolean {
  const rounds = todays.filter((round) => round.people.some((each) => each.person === person.id));
  const closed = rounds.map((round) => round.closings.at(-1)?.at);
  if (closed.includes(undefined)) return true;
  const last = closed
    .flatMap((at) => at ?? [])
    .sort()
    .at(-1);
  return last !== undefined && !reasons.some((reason) => asksAgain(home, reason, last));
}

const CAME_BACK: readonly RuleId[] = [
  'repeat-after-void',
  'repeat-after-inconclusive',
  'repeat-too-old',
];

function asksAgain(home: Home, { rule, facts }: Reason, closed: Instant): boolean {
  if (CAME_BACK.includes(rule)) return true;
  if (rule === 'routine') return false;
  return facts.some((id) => (home.known.get(id)?.at ?? closed) > closed);
}

function kitsExpire({ home, today, policy }: At): Work[] {
  const soon = addDays(today, policy.kitsExpireSoonDays.value);
  return policy.kits
    .flatMap((kit) => stockOf(home, kit.id).lots)
    .filter(
      (lot) => lot.left > 0 && lot.expires <= soon && (usable(lot, today) || lot.expires < today),
    )
    .map((lot) => ({ work: 'kits-expire' as const, lot }));
}
