import type { FactOf } from '../catalogue.ts';
import { lastTurnWith } from '../custody/person-turns.ts';
import { testOf } from '../custody/test.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { FactId } from '../ids.ts';
import { contactsOf } from '../outbreaks/contacts.ts';
import { wholeHomeAsked } from '../outbreaks/whole-home.ts';
import type { Person } from '../people/person.ts';
import { housemates } from '../people/person.ts';
import { policyOn } from '../policy/in-force.ts';
import type { Policy } from '../policy/policy.ts';
import type { RuleId } from '../policy/rules.ts';
import { waitingFor } from '../results/waiting.ts';
import type { Day, Instant } from '../time.ts';
import { addDays, dayOf, daysBetween } from '../time.ts';
import type { Swab } from './history.ts';
import { swabsOf, takenOutOf } from './history.ts';
import { keepsUntil } from './uncollected.ts';

/** Why somebody is due: the rule, the day it counts from, the day by which, and what it rests on. */
export interface Reason {
  readonly rule: RuleId;
  readonly since: Day | undefined;
  readonly by: Day;
  readonly facts: readonly FactId[];
}

/** Why somebody is not tested though a rule would have them. */
export type Exclusion =
  | { readonly why: 'away'; readonly since: Day }
  | { readonly why: 'recent-positive'; readonly until: Day }
  | { readonly why: 'awaiting-result'; readonly since: Day };

export interface DueLine {
  readonly person: Person;
  /** Most pressing first. */
  readonly reasons: readonly Reason[];
  readonly excluded: Exclusion | undefined;
}

/** More pressing first; the same day decides by this order. */
const PRESSING: readonly RuleId[] = [
  'symptoms',
  'contact',
  'whole-home',
  'return',
  'admission',
  'repeat-after-void',
  'repeat-after-inconclusive',
  'repeat-too-old',
  'repeat-after-kit-fault',
  'repeat-after-stop',
  'routine',
];

/**
 * Everybody with a reason to be swabbed on a day for one kind of test, most pressing first. Each
 * line names its rule; the values of the rules are the policy in force on that day. With `now`, a tube
 * that has grown too old by then counts at once; without it, from the day after.
 */
export function dueOn(
  home: Home,
  { on, test, now }: { readonly on: Day; readonly test: string; readonly now?: Instant },
): DueLine[] {
  const { policy } = policyOn(home, on);
  return housemates(home)
    .map((person) => dueLine(home, person, { on, test, policy, now }))
    .filter((line) => line.reasons.length > 0)
    .sort(byNeed);
}

interface Question {
  readonly on: Day;
  readonly test: string;
  readonly policy: Policy;
  readonly now: Instant | undefined;
}

function dueLine(home: Home, person: Person, question: Question): DueLine {
  const swabs = swabsOf(home, person.id, question.test);
  const seen: Seen = { home, person, swabs, ...question };
  const reasons = [
    ...symptoms(seen),
    ...contacts(seen),
    ...wholeHome(seen),
    ...comings(seen),
    ...repeats(seen),
    ...tries(seen),
    ...routine(seen),
  ]
    .filter((reason) => (reason.since ?? '') <= question.on)
    .sort((a, b) => rank(a.rule) - rank(b.rule) || (a.by < b.by ? -1 : 1));
  return { person, reasons, excluded: exclusion(seen) };
}

interface Seen extends Question {
  readonly home: Home;
  readonly person: Person;
  readonly swabs: readonly Swab[];
}

const rank = (rule: RuleId) => PRESSING.indexOf(rule);
const byNeed = (a: DueLine, b: DueLine): number => {
  const [x, y] = [a.reasons[0], b.reasons[0]];
  if (x === undefined || y === undefined) return 0;
  return (
    rank(x.rule) - rank(y.rule) ||
    compare(x.by, y.by) ||
    a.person.name.localeCompare(b.person.name, 'en')
  );
};
const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

const personFacts = ({ home, person }: Seen) => factsIn(home, 'person', person.id);
/** A swab on or after a day answers what became due on it. */
const answered = ({ swabs }: Seen, from: Day) =>
  swabs.findLast((swab) => swab.on >= from) !== undefined;

function symptoms(seen: Seen): Reason[] {
  const { symptomsWithinDays, symptomsCountForDays } = seen.policy.due;
  return standing(personFacts(seen), 'symptoms.noticed')
    .filter(
      ({ data }) =>
        data.on <= seen.on && daysBetween(data.on, seen.on) < symptomsCountForDays.value,
    )
    .filter(({ data }) => !answered(seen, data.on))
    .map((fact) => ({
      rule: 'symptoms' as const,
      since: fact.data.on,
      by: addDays(fact.data.on, symptomsWithinDays.value),
      facts: [fact.id],
    }));
}

/** How long a target day that was missed stays on the list. */
const STAYS_DUE_DAYS = 7;

function onDays(
  seen: Seen,
  { rule, from, days, fact }: { rule: RuleId; from: Day; days: readonly number[]; fact: FactId },
): Reason[] {
  return (
    days
      .map((later) => addDays(from, later))
      .filter((target) => target <= seen.on && daysBetween(target, seen.on) <= STAYS_DUE_DAYS)
      .filter((target) => !answered(seen, target))
      // The first that was missed says how late it is; the later ones are answered by the same swab.
      .slice(0, 1)
      .map((target) => ({ rule, since: from, by: target, facts: [fact] }))
  );
}

const contacts = (seen: Seen): Reason[] =>
  contactsOf(seen.home, seen.person.id).flatMap((fact) =>
    onDays(seen, {
      rule: 'contact',
      from: fact.data.on,
      days: seen.policy.due.contactOnDays.value,
      fact: fact.id,
    }),
  );

const wholeHome = (seen: Seen): Reason[] =>
  wholeHomeAsked(seen.home).flatMap((fact) =>
    onDays(seen, {
      rule: 'whole-home',
      from: fact.data.on,
      days: seen.policy.due.wholeHomeOnDays.value,
      fact: fact.id,
    }),
  );

function comings(seen: Seen): Reason[] {
  const { returnOnDays, admissionOnDays } = seen.policy.due;
  return seen.person.comings.flatMap((fact) => {
    const admitted = fact.data.from === 'admission';
    return onDays(seen, {
      rule: admitted ? 'admission' : 'return',
      from: fact.data.on,
      days: (admitted ? admissionOnDays : returnOnDays).value,
      fact: fact.id,
    });
  });
}

/** The last swab came back void or unclear, was taken out, or grew too old before anybody collected it. */
function repeats(seen: Seen): Reason[] {
  const last = seen.swabs.at(-1);
  const out = takenOutOf(seen.home, seen.person.id, seen.test).at(-1);
  if (out !== undefined && !answered(seen, out.on)) return withdrawn(seen, out);
  if (last === undefined) return [];
  const { outcome } = last;
  if (outcome.state === 'withdrawn') return withdrawn(seen, last);
  const within = seen.policy.due.repeatWithinDays.value;
  if (outcome.state !== 'known') return tooOld(seen, last);
  const rule = REPEATED[outcome.result.data.outcome];
  if (rule === undefined) return [];
  const known = dayOf(outcome.result.at, seen.home.service.zone);
  return [{ rule, since: known, by: addDays(known, within), facts: [outcome.result.id] }];
}

/** A settlement left a swab without a result. Whoever had said no is not asked again because of it. */
function withdrawn(seen: Seen, { outcome }: Swab): Reason[] {
  if (outcome.state !== 'withdrawn') return [];
  const { id, at, data } = outcome.by;
  if (data.finding.startsWith('swabbed-after-no:')) return [];
  const since = dayOf(at, seen.home.service.zone);
  const by = addDays(since, seen.policy.due.repeatWithinDays.value);
  return [{ rule: 'repeat-after-void', since, by, facts: [id] }];
}

const REPEATED: Partial<Record<FactOf<'result.recorded'>['data']['outcome'], RuleId>> = {
  void: 'repeat-after-void',
  withdrawn: 'repeat-after-void',
  inconclusive: 'repeat-after-inconclusive',
};

function tooOld(seen: Seen, { test, round }: Swab): Reason[] {
  const kit = seen.policy.kits.find((each) => each.id === test.opened?.data.kitKind);
  const box = round?.boxes.find((each) => each.id === test.box);
  if (kit === undefined || test.taken === undefined || (box?.handed.length ?? 0) > 0) return [];
  const until = keepsUntil(test.taken.at, kit);
  const end = dayOf(until, seen.home.service.zone);
  return end < seen.on || (seen.now !== undefined && until < seen.now)
    ? [{ rule: 'repeat-too-old', since: end, by: seen.on, facts: [test.taken.id] }]
    : [];
}

/** A turn since the last swab that ended in a stop, or in a kit that failed, in hand or in its bag. */
function tries(seen: Seen): Reason[] {
  const last = lastTurnWith(seen.home, seen.person.id);
  const closed = last?.closed;
  if (last === undefined || closed === undefined) return [];
  const on = dayOf(last.openedAt, seen.home.service.zone);
  const within = seen.policy.due.repeatWithinDays.value;
  if (answered(seen, on) || daysBetween(on, seen.on) > STAYS_DUE_DAYS) return [];
  const { end } = closed.data;
  const rule = end === 'stopped' ? 'repeat-after-stop' : 'repeat-after-kit-fault';
  const leaked =
    end === 'taken' && last.tests.every((id) => testOf(seen.home, id).spoiled !== undefined);
  return end === 'stopped' || end === 'kit-fault' || leaked
    ? [{ rule, since: on, by: addDays(on, within), facts: [closed.id] }]
    : [];
}

function routine(seen: Seen): Reason[] {
  const every = seen.policy.due.routineEveryDays.value;
  if (every === null) return [];
  const last = seen.swabs.at(-1);
  if (last === undefined) return [{ rule: 'routine', since: undefined, by: seen.on, facts: [] }];
  const by = addDays(last.on, every);
  const facts = last.test.taken === undefined ? [] : [last.test.taken.id];
  return by <= seen.on ? [{ rule: 'routine', since: last.on, by, facts }] : [];
}

function exclusion(seen: Seen): Exclusion | undefined {
  const { whereabouts } = seen.person;
  if (whereabouts.where === 'away') return { why: 'away', since: whereabouts.since };
  const span = seen.policy.due.notAfterPositiveDays.value;
  const positive = seen.swabs.findLast(
    ({ outcome }) => outcome.state === 'known' && outcome.result.data.outcome === 'positive',
  );
  if (positive !== undefined && daysBetween(positive.on, seen.on) < span) {
    return { why: 'recent-positive', until: addDays(positive.on, span) };
  }
  const last = seen.swabs.at(-1);
  // A swab from before somebody's signs cannot speak of these: its result is not waited for.
  return last !== undefined && awaited(seen, last) && symptoms(seen).length === 0
    ? { why: 'awaiting-result', since: last.on }
    : undefined;
}

/**
 * Whether the result of the newest swab is still to come in its time. Of an older one nobody waits, and a
 * late one is chased on its own.
 */
function awaited(seen: Seen, last: Swab): boolean {
  const { home, policy, on, now } = seen;
  const from = last.test.taken?.at ?? last.turn.openedAt;
  const waiting = waitingFor(home, last, { now: now ?? from, policy });
  if (waiting === undefined || tooOld(seen, last).length > 0) return false;
  return (
    dayOf(waiting.dueBy, home.service.zone) >= on && (now === undefined || now <= waiting.dueBy)
  );
}
