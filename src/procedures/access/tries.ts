/** Wrong tries at one door: how many in a row, and when the last one was. */
export interface Tries {
  readonly failures: number;
  /** Milliseconds since 1970, by the clock of whoever counts. */
  readonly last: number;
}

export interface Limit {
  /** This many may fail before anybody waits. */
  readonly free: number;
  /** The first wait in ms; each further failure doubles it. */
  readonly firstDelay: number;
  readonly longestDelay: number;
  /** After so long without a failure all is forgotten, in ms. */
  readonly forgetAfter: number;
  /** One failure is forgotten each time so long passes without another, in ms; never, where absent. */
  readonly forgetOneEvery?: number;
}

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** One person on one tablet or at one address. Nobody is ever shut out for good: care goes on. */
export const PERSON_HERE: Limit = {
  free: 5,
  firstDelay: 30_000,
  longestDelay: 15 * MINUTE,
  forgetAfter: DAY,
};
/** One person wherever it is tried: stops guesses that are spread over many addresses. */
export const PERSON_ANYWHERE: Limit = {
  free: 20,
  firstDelay: MINUTE,
  longestDelay: 15 * MINUTE,
  forgetAfter: DAY,
};
/**
 * One tablet or address, whoever is tried: stops one PIN being tried on everybody. A right PIN does
 * not clear it, or a guesser would sign in as themselves now and then; so slips fade, an hour each,
 * or those of a whole home would add up.
 */
export const PLACE: Limit = {
  free: 20,
  firstDelay: 30_000,
  longestDelay: 15 * MINUTE,
  forgetAfter: DAY,
  forgetOneEvery: HOUR,
};

/** How long until the next try may be made, in ms; 0 when it may be made now. */
export function waitFor(tries: Tries | undefined, limit: Limit, now: number): number {
  const kept = remembered(tries, limit, now);
  if (kept === undefined || kept.failures < limit.free) return 0;
  const delay = Math.min(limit.longestDelay, limit.firstDelay * 2 ** (kept.failures - limit.free));
  return Math.max(0, kept.last + delay - now);
}

export function failed(tries: Tries | undefined, limit: Limit, now: number): Tries {
  return { failures: (remembered(tries, limit, now)?.failures ?? 0) + 1, last: now };
}

/** One failure less: what was counted ahead of a check that then succeeded. */
export function takenBack(tries: Tries | undefined): Tries | undefined {
  if (tries === undefined || tries.failures <= 1) return undefined;
  return { failures: tries.failures - 1, last: tries.last };
}

/** A clock that was set back does not lengthen the wait: the delay begins at the earlier time. */
function remembered(tries: Tries | undefined, limit: Limit, now: number): Tries | undefined {
  if (tries === undefined || now - tries.last >= limit.forgetAfter) return undefined;
  if (tries.last > now) return { ...tries, last: now };
  const { forgetOneEvery: every = Infinity } = limit;
  const failures = tries.failures - Math.floor((now - tries.last) / every);
  return failures > 0 ? { ...tries, failures } : undefined;
}
