import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import { contactsOf } from '../outbreaks/contacts.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Swab } from '../rounds/history.ts';
import type { Day, Instant } from '../time.ts';
import { addDays, after, daysBetween, elapsed, endOfDay, HOUR, startOfDay } from '../time.ts';
import { yesOrNo } from './meaning.ts';

/** Isolation by policy: whole days in the service's zone, whatever the clocks do in between. */
export interface Isolation {
  readonly from: Day;
  readonly until: Day;
  readonly starts: Instant;
  /** The first moment after it. */
  readonly ends: Instant;
}

export function isolationOf(home: Home, swab: Swab): Isolation | undefined {
  if (yesOrNo(swab) !== 'positive') return undefined;
  const { policy } = policyOn(home, swab.on);
  const until = addDays(swab.on, policy.isolationDays.value);
  const { zone } = home.service;
  return { from: swab.on, until, starts: startOfDay(swab.on, zone), ends: endOfDay(until, zone) };
}

/** A treatment that helps only for so long, and how much of that is left. */
export interface TreatmentWindow {
  readonly ends: Instant;
  /** Whole hours left, rounded down; below 0 it is over. */
  readonly hoursLeft: number;
  readonly since: Day;
  readonly because: 'signs' | 'contact' | 'swab';
  readonly source: string;
}

/**
 * Counted from the first moment of the day of the first sign, else of the contact, else from the swab:
 * the earliest it may have been, so that nobody waits for hours that are not there.
 */
export function treatmentWindow(home: Home, swab: Swab, now: Instant): TreatmentWindow | undefined {
  const { policy } = policyOn(home, swab.on);
  const rule = policy.interpretation?.treatmentHours;
  if (rule === undefined || yesOrNo(swab) !== 'positive') return undefined;
  const near = (day: Day) => day <= swab.on && daysBetween(day, swab.on) <= 10;
  const signs = standing(factsIn(home, 'person', swab.turn.person), 'symptoms.noticed')
    .filter(({ data }) => data.signs.length > 0 && near(data.on))
    .map(({ data }) => data.on)
    .sort()[0];
  const contact = contactsOf(home, swab.turn.person)
    .map(({ data }) => data.on)
    .filter(near)
    .sort()[0];
  const since = signs ?? contact ?? swab.on;
  const because = signs !== undefined ? 'signs' : contact !== undefined ? 'contact' : 'swab';
  const ends = after(startOfDay(since, home.service.zone), rule.value * HOUR);
  return {
    ends,
    hoursLeft: Math.floor(elapsed(now, ends) / HOUR),
    since,
    because,
    source: rule.source,
  };
}
