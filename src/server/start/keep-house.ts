import type { Server } from 'node:https';
import { after, instantOf } from '../../care/time.ts';
import { PLACE } from '../../procedures/access/tries.ts';
import type { Parts } from '../parts.ts';
import type { HomeNetwork } from './home-network.ts';

const HOUR = 60 * 60 * 1000;
const DAY = 24 * HOUR;
/** Who signed in when is personal data too: kept a little over a year, then gone. */
const EVENTS_KEPT = 400 * DAY;
const EVERY = 6 * HOUR;

/** Forgets what need not be kept. */
function tidy({ accounts, now }: Parts): void {
  accounts.together(() => {
    accounts.sessions.prune(now());
    accounts.doors.prune(now() - PLACE.forgetAfter);
    accounts.events.prune(after(instantOf(now()), -EVENTS_KEPT));
  });
}

export interface Secured {
  readonly network: HomeNetwork;
  readonly server: Pick<Server, 'setSecureContext'>;
}

/** What a server that runs for months does from time to time. */
export async function keepHouse(parts: Parts, secured: Secured | undefined): Promise<void> {
  tidy(parts);
  const fresh = await secured?.network.renew();
  if (fresh) secured?.server.setSecureContext({ ...fresh, minVersion: 'TLSv1.2' });
}

/** Does so now and every six hours. Answers what ends it. */
export function houseKeeper(
  parts: Parts,
  secured: Secured | undefined,
  onFault: (error: unknown) => void,
): () => void {
  const work = () => void keepHouse(parts, secured).catch(onFault);
  const timer = setInterval(work, EVERY);
  timer.unref();
  work();
  return () => clearInterval(timer);
}
