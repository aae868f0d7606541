import type { Home } from '../home.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Swab } from '../rounds/history.ts';
import { swabsInRound, takenOutInRound } from '../rounds/history.ts';
import { rounds } from '../rounds/round.ts';
import type { Instant } from '../time.ts';
import { addDays, dayOf } from '../time.ts';
import { actionsFor, isSettled } from './actions.ts';
import type { Waiting } from './waiting.ts';
import { waitingFor } from './waiting.ts';

/** Older swabs are found on the person's page. */
const LOOK_BACK_DAYS = 120;

/** Where every swab of the last months stands with its result. */
export interface Board {
  /** Past the time by which a result should have come, oldest first. */
  readonly late: readonly Waiting[];
  /** Still in their time, oldest first. */
  readonly waiting: readonly Waiting[];
  /** A result is there, but something does not fit. */
  readonly held: readonly Swab[];
  /** Something that the result asks for is not done yet; those whose result was taken out come first. */
  readonly toAct: readonly Swab[];
  /** Known and acted on, newest result first. */
  readonly known: readonly Swab[];
}

export function resultsBoard(home: Home, now: Instant): Board {
  const today = dayOf(now, home.service.zone);
  const { policy } = policyOn(home, today);
  const recent = rounds(home).filter(
    (round) => round.planned.data.day >= addDays(today, -LOOK_BACK_DAYS),
  );
  const swabs = recent.flatMap((round) => swabsInRound(home, round));
  const waiting = swabs
    .flatMap((swab) => waitingFor(home, swab, { now, policy }) ?? [])
    .sort((a, b) => (a.since < b.since ? -1 : 1));
  const known = swabs.filter(({ outcome }) => outcome.state === 'known').sort(newestResult);
  const without = [
    ...swabs.filter(({ outcome }) => outcome.state === 'waiting' || outcome.state === 'withdrawn'),
    ...recent.flatMap((round) => takenOutInRound(home, round)),
  ];
  const open = (swab: Swab) => !actionsFor(home, swab.test.id).every(isSettled);
  return {
    late: waiting.filter(({ late }) => late),
    waiting: waiting.filter(({ late }) => !late),
    held: swabs.filter(({ outcome }) => outcome.state === 'held'),
    toAct: [...without.filter(open), ...known.filter(open)],
    known: known.filter((swab) => !open(swab)),
  };
}

const resultAt = ({ outcome }: Swab): string =>
  outcome.state === 'known' ? outcome.result.at : '';
const newestResult = (a: Swab, b: Swab): number => (resultAt(a) < resultAt(b) ? 1 : -1);
