/** How long a failed sync waits before the next, in ms. */
const FIRST_WAIT_MS = 1000;
const LONGEST_WAIT_MS = 60_000;
/** Without news from the server, a tablet asks this often by itself. */
export const ASK_EVERY_MS = 60_000;
/** With live news it only renews its lease and its clock. */
export const ASK_LIVE_EVERY_MS = 5 * 60_000;

/**
 * When to try again after so many failures in a row: twice as long each time, up to a minute, and
 * anywhere in the upper half of it, so that a home's tablets do not all come back at once.
 */
export function waitAfter(failures: number, chance: number): number {
  const whole = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** Math.min(failures - 1, 16));
  return Math.round(whole * (0.5 + chance / 2));
}
