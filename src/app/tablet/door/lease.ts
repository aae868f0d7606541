/** The last time tablet and server met, by the tablet's own clock. All in ms. */
export interface Contact {
  readonly deviceAt: number;
  /** How long a PIN opens the tablet from then on. */
  readonly leaseMs: number;
}

/** Clocks are a little uneven; setting one back by more than this counts as a lease that is over. */
const CLOCK_SLACK_MS = 5 * 60_000;

/**
 * Whether a PIN alone no longer opens this tablet. `highest`: the latest that its clock has ever been
 * seen at, so that setting it back wins nothing.
 */
export function leaseOver(
  contact: Contact,
  by: { readonly deviceNow: number; readonly highest: number },
): boolean {
  const latest = Math.max(by.highest, contact.deviceAt);
  if (by.deviceNow < latest - CLOCK_SLACK_MS) return true;
  return by.deviceNow > contact.deviceAt + contact.leaseMs;
}
