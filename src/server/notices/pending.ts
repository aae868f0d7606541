import type { Home } from '../../care/home.ts';
import { actionsFor, isSettled } from '../../care/results/actions.ts';
import { isolationOf } from '../../care/results/after-positive.ts';
import { resultsBoard } from '../../care/results/board.ts';
import { tray } from '../../care/results/tray.ts';
import type { Instant } from '../../care/time.ts';
import { after, HOUR } from '../../care/time.ts';
import type { FeedEvent } from '../../exchange/calendar/feed.ts';

/** What somebody on call is told of, once each. The key names it without saying what it is. */
export interface Pending {
  readonly key: string;
}

/** Positives and withdrawn results with something that nobody has in hand, and reports that wait. */
export function pendingIn(home: Home, now: Instant): Pending[] {
  const urgent = resultsBoard(home, now).toAct.flatMap(({ test }) => {
    const open = actionsFor(home, test.id).find(
      (action) => !isSettled(action) && action.named === undefined,
    );
    return open !== undefined && ['positive', 'withdrawn'].includes(open.outcome)
      ? [{ key: `result/${open.rests}` }]
      : [];
  });
  return [
    ...urgent,
    ...tray(home).map(({ received }) => ({ key: `report/${received.data.report}` })),
  ];
}

/** When something has to be looked at: by when actions are due, and the end of each isolation. */
export function eventsIn(home: Home, now: Instant): FeedEvent[] {
  const { toAct, known } = resultsBoard(home, now);
  const due = toAct.flatMap(({ test }) =>
    actionsFor(home, test.id)
      .filter((action) => !isSettled(action))
      .map((action) => ({
        id: `due-${test.id}-${action.kind}`,
        starts: after(action.due, -HOUR / 2),
        ends: action.due,
        title: 'Due in Tallyround',
      })),
  );
  const ends = [...toAct, ...known].flatMap((swab) => {
    const isolation = isolationOf(home, swab);
    return isolation === undefined || isolation.ends < now
      ? []
      : [
          {
            id: `ends-${swab.test.id}`,
            starts: after(isolation.ends, -HOUR),
            ends: isolation.ends,
            title: 'Something ends today: open Tallyround',
          },
        ];
  });
  return [...due, ...ends];
}
