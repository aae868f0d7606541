import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import { testKindOf } from '../policy/in-force.ts';
import type { Policy } from '../policy/policy.ts';
import type { Swab } from '../rounds/history.ts';
import type { Day, Instant } from '../time.ts';
import { after, dayOf, HOUR } from '../time.ts';

/** A test whose result has not come, and by when it should. */
export interface Waiting {
  readonly swab: Swab;
  readonly since: Instant;
  readonly dueBy: Instant;
  readonly late: boolean;
  readonly chased: readonly FactOf<'result.chased'>[];
  /** Not before this time: somebody rang and was told when. */
  readonly quietUntil: Instant | undefined;
}

/** The 72 h (or what policy says) run from the swab, as elapsed time. */
export function waitingFor(
  home: Home,
  swab: Swab,
  at: { readonly now: Instant; readonly policy: Policy },
): Waiting | undefined {
  const { taken } = swab.test;
  if (swab.outcome.state !== 'waiting' || taken === undefined) return undefined;
  const kind = testKindOf(at.policy, swab.round?.planned.data.test ?? '');
  const dueBy = after(taken.at, (kind?.resultHours.value ?? 72) * HOUR);
  const chased = standing(factsIn(home, 'test', swab.test.id), 'result.chased');
  return {
    swab,
    since: taken.at,
    dueBy,
    late: at.now > dueBy,
    chased,
    quietUntil: chased.at(-1)?.data.next,
  };
}

/** The day on which a test has to be registered: the day it was taken. */
export const registerBy = (home: Home, swab: Swab): Day =>
  dayOf(swab.test.taken?.at ?? swab.turn.openedAt, home.service.zone);
