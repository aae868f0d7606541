import { type Instant, instantOf, millisOf } from './ids.ts';
import type { LedgerStore } from './store.ts';

/** An exchange that took longer says too little about the server's clock. */
const MAX_ROUND_TRIP_MS = 5_000;
/** Without contact for longer, the clock is shown to somebody before the first fact. */
const MAX_SILENCE_MS = 24 * 60 * 60 * 1000;
/** Key of the clock among the store's small things. */
export const CLOCK = 'clock';

/** What a tablet knows of time. App time = the device's own clock + `off`. */
export interface Clock {
  readonly off: number;
  /** App time of the last good exchange with the server; absent before the first. */
  readonly contact?: Instant;
  /**
   * The latest `arrived` of any confirmed fact: time cannot be earlier. A fact's own `at` adds
   * nothing to it: one later than its arrival proves the clock that wrote it wrong, not ours.
   */
  readonly latest?: Instant;
}

export async function clockOf(store: LedgerStore): Promise<Clock> {
  const text = await store.meta(CLOCK);
  return text === undefined ? { off: 0 } : (JSON.parse(text) as Clock);
}

/** App time for a reading of the device's own clock (ms since 1970). */
export function appTime(clock: Clock, deviceNow: number): Instant {
  const at = instantOf(deviceNow + clock.off);
  if (at === undefined) throw new RangeError(`no such time: ${deviceNow} + ${clock.off}`);
  return at;
}

/** One exchange with the server, in the device's own clock. */
export interface Exchange {
  readonly sent: number;
  readonly received: number;
  readonly serverNow: Instant;
}

/** The clock after an exchange: halfway there and back, as NTP does (RFC 5905 section 8). */
export function measured(clock: Clock, { sent, received, serverNow }: Exchange): Clock {
  const roundTrip = received - sent;
  if (roundTrip < 0 || roundTrip > MAX_ROUND_TRIP_MS) return clock;
  const off = Math.round(millisOf(serverNow) - (sent + received) / 2);
  const contact = instantOf(received + off);
  return { ...clock, off, ...(contact && { contact }) };
}

/** The clock once somebody has said what time it is. */
export const setByHand = (clock: Clock, deviceNow: number, rightTime: Instant): Clock => ({
  ...clock,
  off: millisOf(rightTime) - Math.round(deviceNow),
});

export function witnessed(clock: Clock, receipts: readonly { readonly arrived: Instant }[]): Clock {
  const latest = receipts.reduce(
    (a, { arrived }) => (a > arrived ? a : arrived),
    clock.latest ?? '',
  );
  return latest === '' ? clock : { ...clock, latest: latest as Instant };
}

/** Why somebody should be asked "It is Tuesday 3 March, 09:12. Right?" before the first fact. */
export interface ClockQuestion {
  readonly because: 'behind-what-is-known' | 'long-without-contact';
  readonly now: Instant;
  /** The latest known time, or the last contact; absent when there never was one. */
  readonly since?: Instant;
}

export function clockQuestion(clock: Clock, deviceNow: number): ClockQuestion | undefined {
  const now = appTime(clock, deviceNow);
  const { latest, contact } = clock;
  if (latest !== undefined && now < latest)
    return { because: 'behind-what-is-known', now, since: latest };
  if (contact !== undefined && millisOf(now) - millisOf(contact) <= MAX_SILENCE_MS)
    return undefined;
  return { because: 'long-without-contact', now, ...(contact && { since: contact }) };
}
