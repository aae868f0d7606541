import { falseNegativeRateByDay } from '../../statistics/diagnostics/false-negative-rate-by-day.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { PersonId } from '../ids.ts';
import { contactsOf } from '../outbreaks/contacts.ts';
import type { Policy } from '../policy/policy.ts';
import type { Swab } from '../rounds/history.ts';
import { daysBetween, elapsed, HOUR } from '../time.ts';

export type Interpretation = NonNullable<Policy['interpretation']>;

/** What makes one swab find less than the test can at its best. Each has words for staff. */
export type StrengthReason = 'site' | 'day' | 'short' | 'long-way';

export interface Strength {
  /** Share of the test's best sensitivity that this swab had. */
  readonly share: number;
  readonly because: readonly { readonly why: StrengthReason; readonly share: number }[];
  /** Days from exposure to the swab, where anything is known of it and the table has it. */
  readonly day: number | undefined;
}

/** Policy's shares are whole numbers in 10,000. */
const TEN_THOUSAND = 10_000;
/** The day on which the published table misses fewest. */
const BEST_DAY = 8;
/** The table's authors take the first signs to come 5 days after exposure (Kucirka and others, 2020). */
const ONSET_DAY = 5;

/** How much of its sensitivity a swab had: by site, day, how long it was in, and the way to the laboratory. */
export function strengthOf(home: Home, swab: Swab, interpretation: Interpretation): Strength {
  const { taken } = swab.test;
  const because: { why: StrengthReason; share: number }[] = [];
  const add = (why: StrengthReason, share: number) => {
    if (share < 1) because.push({ why, share });
  };
  const sites = new Set(
    taken?.data.sites.map(({ site }) => (site === 'throat' ? 'throat' : 'nose')),
  );
  const { throatAndNose, nose, throat } = interpretation.siteYield.value;
  const yields = sites.size === 2 ? throatAndNose : sites.has('throat') ? throat : nose;
  add('site', yields / TEN_THOUSAND);
  const day = exposureDay(home, swab);
  const rate = day === undefined ? undefined : falseNegativeRateByDay(day);
  const best = falseNegativeRateByDay(BEST_DAY);
  const known = rate?.ok === true && best.ok;
  if (known) add('day', (1 - rate.value.rate) / (1 - best.value.rate));
  if (taken?.data.short !== undefined) add('short', interpretation.shortSwab.value / TEN_THOUSAND);
  const { hours, share } = interpretation.longWay.value;
  if (hoursOnTheWay(swab) > hours) add('long-way', share / TEN_THOUSAND);
  return {
    share: because.reduce((all, each) => all * each.share, 1),
    because,
    day: known ? day : undefined,
  };
}

/** From the first sign noticed, or else the last contact, in the two weeks before the swab. */
function exposureDay(home: Home, { turn, on }: Swab): number | undefined {
  const near = (day: Parameters<typeof daysBetween>[0]) => day <= on && daysBetween(day, on) <= 14;
  const onset = onsetOf(home, turn.person, near);
  if (onset !== undefined) return daysBetween(onset, on) + ONSET_DAY;
  const contact = contactsOf(home, turn.person)
    .map(({ data }) => data.on)
    .filter(near)
    .sort()
    .at(-1);
  return contact === undefined ? undefined : daysBetween(contact, on);
}

const onsetOf = (
  home: Home,
  person: PersonId,
  near: (day: Swab['on']) => boolean,
): Swab['on'] | undefined =>
  standing(factsIn(home, 'person', person), 'symptoms.noticed')
    .filter(({ data }) => data.signs.length > 0 && near(data.on))
    .map(({ data }) => data.on)
    .sort()[0];

/** Until it was handed over: when the laboratory has it is not known here. */
function hoursOnTheWay({ test, round }: Swab): number {
  const handed = round?.boxes.find(({ id }) => id === test.box)?.handed.at(-1)?.at;
  return test.taken === undefined || handed === undefined
    ? 0
    : elapsed(test.taken.at, handed) / HOUR;
}
