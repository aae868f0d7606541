import type { Fact, FactOf } from '../catalogue.ts';
import { testsWithCode } from '../custody/code.ts';
import type { Test } from '../custody/test.ts';
import { testOf } from '../custody/test.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import { concluding, factsIn, keysOn, ofKind, standing } from '../home.ts';
import type { FactId, PersonId, ReportId, TestId } from '../ids.ts';
import { alikeTo, personOf } from '../people/person.ts';
import { isWithdrawn } from '../quality/held.ts';
import { everRanked } from '../staff/rights.ts';
import { dayOf } from '../time.ts';
import { replacedByCorrection, before as standingOn } from './counting.ts';
import type { Outcome } from './facts.ts';
import { namesAgree } from './names-agree.ts';
import { registrationOf } from './outcome.ts';
import type { Recorded } from './recorded.ts';

/** Why a report was not put on anybody's record by itself. Each has words for staff. */
export const trayReasons = [
  'code-missing',
  'code-unknown',
  'code-on-two',
  'code-closed',
  'test-withdrawn',
  'no-identity',
  'born-differs',
  'name-differs',
  'name-not-enough',
  'reference-differs',
  'second-result',
  'before-swab',
  'never-packed',
  'nothing-to-correct',
  'words-unknown',
  'test-unknown',
  'day-missing',
  'preliminary',
] as const;
export type TrayReason = (typeof trayReasons)[number];

export type Received = FactOf<'report.received'>;

/** What a report says, as far as it bears on whose it is. */
export interface Told {
  readonly codes: readonly string[];
  readonly outcome: Outcome | undefined;
  readonly status: Received['data']['status'];
  readonly reported: string | undefined;
  readonly name: string;
  readonly born: string;
  /** A reference of ours that stands on it; "" for none. Compared only where the test has one. */
  readonly reference: string;
  readonly unknownTest: boolean;
}

export interface Match {
  /** The one test its code leads to, if there is one. */
  readonly test: TestId | undefined;
  readonly person: PersonId | undefined;
  /** Empty: it fits, and may be kept by itself. */
  readonly reasons: readonly TrayReason[];
  readonly matched: 'born' | 'name' | 'none';
  /** The result it says is there already, of the same day: nothing to keep. */
  readonly same: boolean;
  /** Fits, but contradicts what is there: kept as a second result, which holds the test. */
  readonly contradicts: boolean;
  /** Results it corrects or takes back. */
  readonly replaces: readonly FactId[];
}

const none = { matched: 'none', same: false, contradicts: false, replaces: [] } as const;

/**
 * Whose a report is: its code, and at least one thing that identifies the person. Where any of these
 * disagrees it is nobody's until a named person has looked. Never on a code alone.
 */
export function matchReport(home: Home, told: Told): Match {
  const tests = testsNamed(home, told.codes);
  const [test] = tests;
  if (test === undefined || tests.length > 1) {
    const why =
      told.codes.length === 0
        ? 'code-missing'
        : test === undefined
          ? 'code-unknown'
          : 'code-on-two';
    return { ...none, test: undefined, person: undefined, reasons: [why, ...unclear(told)] };
  }
  const person = test.turn === undefined ? undefined : turnOf(home, test.turn)?.person;
  const identity = identityOf(home, person, told);
  const before = standingOn(home, test.id);
  const corrects = told.status === 'corrected' || told.status === 'withdrawn';
  const clash = corrects ? undefined : clashOf(before, told);
  const reasons = [
    ...identity.reasons,
    ...referenceReason(home, test.id, told),
    ...custodyReasons(home, test, told),
    ...(told.status === 'withdrawn' && before.length === 0
      ? (['nothing-to-correct'] as const)
      : []),
    ...(clash === 'second' ? (['second-result'] as const) : []),
    ...unclear(told),
  ];
  return {
    test: test.id,
    person,
    reasons,
    matched: identity.matched,
    same: reasons.length === 0 && (clash === 'same' || (corrects && sameNow(before, told))),
    contradicts: clash === 'contradicts',
    replaces: corrects ? replacedByCorrection(home, test.id) : [],
  };
}

/** Every test that any of the codes was ever used for, those withdrawn by a settlement left out. */
function testsNamed(home: Home, codes: readonly string[]): Test[] {
  const ids = new Set(codes.flatMap((code) => [...testsWithCode(home, code as never).keys()]));
  const tests = [...ids].sort().map((id) => testOf(home, id));
  const standingTests = tests.filter(({ id }) => !isWithdrawn(home, id));
  return standingTests.length > 0 ? standingTests : tests;
}

function identityOf(
  home: Home,
  id: PersonId | undefined,
  { name, born }: Told,
): { reasons: TrayReason[]; matched: Match['matched'] } {
  if (id === undefined || (name === '' && born === ''))
    return { reasons: ['no-identity'], matched: 'none' };
  const person = personOf(home, id);
  const reasons: TrayReason[] = [];
  const bornFits = born !== '' && person.born === born;
  // A birth date that we do not have cannot disagree, and cannot agree.
  if (born !== '' && person.born !== undefined && !bornFits) reasons.push('born-differs');
  const nameFits = name !== '' && namesAgree(person, name);
  if (name !== '' && person.name !== '' && !nameFits) reasons.push('name-differs');
  if (reasons.length > 0) return { reasons, matched: 'none' };
  if (bornFits) return { reasons, matched: 'born' };
  if (!nameFits) return { reasons: ['no-identity'], matched: 'none' };
  return alikeTo(home, person).some(({ why }) => why.some((each) => each !== 'same-birthday'))
    ? { reasons: ['name-not-enough'], matched: 'none' }
    : { reasons, matched: 'name' };
}

function referenceReason(home: Home, test: TestId, { reference, codes }: Told): TrayReason[] {
  const ours = registrationOf(home, test).registered?.data.reference;
  if (reference === '' || ours === undefined || codes.includes(reference)) return [];
  return plain(ours) === plain(reference) ? [] : ['reference-differs'];
}

const plain = (text: string): string => text.replaceAll(/[\s-]/g, '').toLocaleUpperCase('en');

function custodyReasons(home: Home, test: Test, told: Told): TrayReason[] {
  if (test.spoiled !== undefined) return ['code-closed'];
  const reasons: TrayReason[] = isWithdrawn(home, test.id) ? ['test-withdrawn'] : [];
  if (test.packed.length === 0) reasons.push('never-packed');
  const { taken } = test;
  if (taken === undefined) return [...reasons, 'before-swab'];
  const early = told.reported !== undefined && told.reported < dayOf(taken.at, home.service.zone);
  return early ? [...reasons, 'before-swab'] : reasons;
}

function clashOf(
  before: readonly Recorded[],
  told: Told,
): 'same' | 'second' | 'contradicts' | undefined {
  if (before.length === 0 || told.outcome === undefined) return undefined;
  if (sameNow(before, told)) return 'same';
  return before.some(({ data }) => data.outcome !== told.outcome) ? 'contradicts' : 'second';
}

const sameNow = (before: readonly Recorded[], { outcome, reported }: Told): boolean =>
  before.some(({ data }) => data.outcome === outcome && data.reported === reported);

function unclear({ outcome, status, reported, unknownTest }: Told): TrayReason[] {
  return [
    ...(outcome === undefined ? (['words-unknown'] as const) : []),
    ...(unknownTest ? (['test-unknown'] as const) : []),
    ...(reported === undefined ? (['day-missing'] as const) : []),
    ...(status === 'preliminary' ? (['preliminary'] as const) : []),
  ];
}

/** What was kept of a report, read back. Erased parts are empty. */
export const toldIn = ({ data, private: hidden }: Received): Told => ({
  codes: data.codes,
  outcome: data.outcome,
  status: data.status,
  reported: data.reported,
  name: hidden?.name ?? '',
  born: hidden?.born ?? '',
  reference: '',
  unknownTest: data.unknownTest === true,
});

interface Filed {
  readonly received: Received | undefined;
  readonly recorded: readonly Recorded[];
  readonly settled: readonly FactOf<'report.settled'>[];
}

const filed = concluding(
  'report',
  (facts: readonly Fact[]): Filed => ({
    received: ofKind(facts, 'report.received')[0],
    recorded: ofKind(facts, 'result.recorded'),
    settled: standing(facts, 'report.settled'),
  }),
);

/** A report that waits for a named person, with what stands against it now. */
export interface InTray {
  readonly received: Received;
  readonly match: Match;
}

export const reportOf = (home: Home, id: ReportId): Received | undefined =>
  filed(home, id).received;

/** Settled by somebody who may, or put on a record: nothing is left to decide. */
function isOpen(home: Home, { received, recorded, settled }: Filed): boolean {
  if (received === undefined || recorded.length > 0) return false;
  return !settled.some((fact) => everRanked(home, fact.by, 'senior'));
}

/** Every report that waits, oldest first; of two that say the same thing the first. */
export function tray(home: Home): InTray[] {
  const seen = new Set<string>();
  const open: InTray[] = [];
  const ids = [...keysOn(home, 'report')].filter((key) => !key.startsWith('code/'));
  const all = ids.map((id) => filed(home, id)).sort((a, b) => order(a, b));
  for (const each of all) {
    const { received } = each;
    if (received === undefined) continue;
    const text = sameText(received);
    if (seen.has(text)) continue;
    seen.add(text);
    if (isOpen(home, each)) open.push({ received, match: waitsWith(home, received) });
  }
  return open;
}

/** One that would contradict what stands now waits as a second result. */
function waitsWith(home: Home, received: Received): Match {
  const match = matchReport(home, toldIn(received));
  return match.contradicts && match.reasons.length === 0
    ? { ...match, reasons: ['second-result'] }
    : match;
}

const order = (a: Filed, b: Filed): number =>
  (a.received?.at ?? '') < (b.received?.at ?? '') ? -1 : 1;

/** Two reports are one if they say the same in every part. The laboratory's number tells repeats apart. */
function sameText({ data, private: hidden }: Pick<Received, 'data' | 'private'>): string {
  const { report: _drawn, source: _door, ...rest } = data;
  const parts = Object.entries({ ...rest, ...hidden }).sort(([a], [b]) => (a < b ? -1 : 1));
  return JSON.stringify(parts);
}

/** Whether a report was taken in before, on any tablet, through any door. */
export function takenInBefore(home: Home, report: Pick<Received, 'data' | 'private'>): boolean {
  const text = sameText(report);
  const near =
    report.data.codes[0] === undefined
      ? [...keysOn(home, 'report')].filter((key) => !key.startsWith('code/'))
      : [`code/${report.data.codes[0]}`];
  return near.some((key) =>
    ofKind(factsIn(home, 'report', key), 'report.received').some((fact) => sameText(fact) === text),
  );
}
