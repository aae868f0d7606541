import type { Outcome } from '../../../care/results/facts.ts';
import type { Day, Zone } from '../../../care/time.ts';
import { dayOfMoment, dayWritten } from '../day-told.ts';
import type { OwnWords } from '../meaning-of-words.ts';
import { outcomeMeant, testMeant, together } from '../meaning-of-words.ts';
import type { Ask, ReadReports, ReportedResult, ReportStatus } from '../reported.ts';
import { unread } from '../reported.ts';
import { readJson } from './json-text.ts';
import type { Part, Resource, Resources } from './resources.ts';
import { part, parts, resourcesIn, text } from './resources.ts';

export interface FhirSettings {
  /** The service's zone, in which a moment has its day. */
  readonly zone: Zone;
  readonly words?: OwnWords;
}

/**
 * The results in FHIR R4 JSON: a DiagnosticReport with its Observations, or an Observation by itself;
 * as one resource, in a Bundle, or in NDJSON, with Patient and Specimen referred to or contained.
 */
export function readFhir(json: string, settings: FhirSettings): ReadReports {
  const read = readJson(json);
  if (!read.ok) return read;
  const resources = resourcesIn(read.values);
  if (resources === undefined) return unread('too-many', 'There are over 200,000 resources in it.');
  const told = resources.all.filter(({ type }) => type === 'DiagnosticReport');
  const used = new Set<Part>();
  const reports = told.map((report) => {
    const observations = parts(report.value['result']).flatMap(
      (reference) => resources.find(reference, report) ?? [],
    );
    for (const each of observations) used.add(each.value);
    return reportOf(report, { observations, resources, settings });
  });
  const alone = resources.all.filter(
    ({ type, value }) => type === 'Observation' && !used.has(value),
  );
  reports.push(
    ...alone.map((each) => reportOf(each, { observations: [each], resources, settings })),
  );
  return reports.length > 0
    ? { ok: true, reports }
    : unread('not-results', 'There is no DiagnosticReport and no Observation in it.');
}

interface Around {
  readonly observations: readonly Resource[];
  readonly resources: Resources;
  readonly settings: FhirSettings;
}

const CODE = /^[\x21-\x7e]{4,48}$/;

function reportOf(report: Resource, { observations, resources, settings }: Around): ReportedResult {
  const asks: Ask[] = [];
  const follow = (key: string): Resource | undefined => {
    for (const each of [report, ...observations]) {
      const value = each.value[key];
      for (const reference of Array.isArray(value) ? value : [value]) {
        const found = resources.find(reference, each);
        if (found !== undefined) return found;
      }
    }
    return undefined;
  };
  const codes = codesOf(follow('specimen')?.value, report.value);
  if (codes.length === 0) asks.push({ ask: 'code-missing' });
  for (const code of codes)
    if (!CODE.test(code)) asks.push({ ask: 'code-unreadable', given: code });

  const left = observations.filter((each) => !isTakenBack(each));
  // What the laboratory took back says nothing any more, unless it took back everything.
  const counted = left.length > 0 ? left : observations;
  const seen = counted.map(({ value }) => observationSays(value, settings.words));
  const concluded = parts(report.value['conclusionCode']).map((each) =>
    conceptSays(each, settings.words),
  );
  const says = seen.length > 0 ? seen : concluded;
  const tests = [...new Set(counted.flatMap(({ value }) => loincOf(value['code'])))];
  for (const test of tests)
    if (testMeant(test) === undefined) asks.push({ ask: 'test-unknown', given: test });
  const status = statusOf(report, observations);
  const outcome = status === 'withdrawn' ? 'withdrawn' : together(says.map((each) => each.outcome));
  const said = [...new Set(says.map((each) => each.said))].join(', ').slice(0, 200);
  if (outcome === undefined) asks.push({ ask: 'words-unknown', given: said });

  const issued = [report, ...observations]
    .map(({ value }) => text(value['issued']) || text(value['effectiveDateTime']))
    .find((at) => at !== '');
  const reported = issued === undefined ? undefined : dayIn(issued, settings.zone);
  if (issued === undefined) asks.push({ ask: 'day-missing' });
  else if (reported === undefined)
    asks.push({
      ask: 'day-unclear',
      about: 'reported',
      given: issued.slice(0, 60),
      why: 'not-a-date',
    });

  const patient = follow('subject')?.value;
  const birth = text(patient?.['birthDate']);
  const born = birth === '' ? undefined : dayIn(birth, settings.zone);
  if (birth !== '' && born === undefined)
    asks.push({ ask: 'day-unclear', about: 'born', given: birth.slice(0, 60), why: 'not-a-date' });
  return {
    place: {
      at: 'pointer',
      pointer: report.pointer,
      ...(report.line !== undefined && { line: report.line }),
    },
    codes,
    outcome,
    said,
    status,
    reported,
    name: nameOf(patient),
    born,
    reference: text(
      parts(report.value['basedOn']).map((each) => part(each['identifier'])['value'])[0],
    ),
    report: text(parts(report.value['identifier'])[0]?.['value']),
    laboratory: text(parts(report.value['performer'])[0]?.['display']).slice(0, 200),
    tests,
    asks,
  };
}

/** The container's identifier is the tube's own; then the specimen's, then what the order called it. */
function codesOf(specimen: Part | undefined, report: Part): string[] {
  const container = parts(specimen?.['container']).flatMap((each) => parts(each['identifier']));
  const own = parts(specimen?.['identifier']);
  const accession = part(specimen?.['accessionIdentifier']);
  const displayed = parts(report['specimen']).map((each) => part(each['identifier']));
  const all = [...container, ...own, accession, ...displayed].map((each) => text(each['value']));
  return [...new Set(all.filter((code) => code !== ''))];
}

interface Says {
  readonly outcome: Outcome | undefined;
  readonly said: string;
}

function observationSays(observation: Part, words: OwnWords | undefined): Says {
  if (text(observation['status']) === 'cancelled') return { outcome: 'void', said: 'cancelled' };
  const absent = observation['dataAbsentReason'];
  const value = observation['valueCodeableConcept'] ?? observation['interpretation'];
  if (value === undefined && absent !== undefined)
    return { outcome: 'void', said: text(part(absent)['text']) };
  const plain = text(observation['valueString']);
  if (plain !== '') return { outcome: outcomeMeant(plain, words), said: plain };
  return conceptSays(part(Array.isArray(value) ? value[0] : value), words);
}

/** By every coding and the text; codings that contradict each other are not known. */
function conceptSays(concept: Part, words: OwnWords | undefined): Says {
  const codings = parts(concept['coding']);
  const says = [
    ...codings.flatMap((coding) => [text(coding['code']), text(coding['display'])]),
    text(concept['text']),
  ].filter((each) => each !== '');
  const meanings = new Set(says.flatMap((each) => outcomeMeant(bare(each), words) ?? []));
  const [meaning] = meanings;
  const said = text(concept['text']) || text(codings[0]?.['display']) || (says[0] ?? '');
  return { outcome: meanings.size === 1 ? meaning : undefined, said };
}

/** SNOMED CT displays name the kind of concept at their end: "Negative (qualifier value)". */
const bare = (display: string): string =>
  display.replace(/\s*\((?:qualifier value|finding)\)$/, '');

const LOINC = 'http://loinc.org';

const loincOf = (concept: unknown): string[] =>
  parts(part(concept)['coding'])
    .filter((coding) => text(coding['system']) === LOINC)
    .map((coding) => text(coding['code']))
    .filter((code) => code !== '');

const byStatus: Readonly<Record<string, ReportStatus>> = {
  final: 'final',
  amended: 'corrected',
  corrected: 'corrected',
  appended: 'corrected',
  cancelled: 'withdrawn',
  'entered-in-error': 'withdrawn',
};

/** The report's own status; one that is final, of an observation that is not, is what the observation is. */
function statusOf(report: Resource, observations: readonly Resource[]): ReportStatus {
  const of = ({ value }: Resource): ReportStatus =>
    byStatus[text(value['status'])] ?? 'preliminary';
  const own = of(report);
  if (own !== 'final') return own;
  const inside = observations.map(of);
  if (inside.length > 0 && inside.every((each) => each === 'withdrawn'))
    return observations.every(({ value }) => text(value['status']) === 'cancelled')
      ? 'final'
      : 'withdrawn';
  if (inside.includes('preliminary')) return 'preliminary';
  if (observations.some(isTakenBack)) return 'corrected';
  return inside.includes('corrected') ? 'corrected' : 'final';
}

/** Entered in error: it never was. A cancelled one was not measured, and leaves the whole void. */
const isTakenBack = ({ value }: Resource): boolean => text(value['status']) === 'entered-in-error';

function nameOf(patient: Part | undefined): string {
  const names = parts(patient?.['name']);
  const name = names.find((each) => text(each['use']) === 'official') ?? names[0];
  if (name === undefined) return '';
  const given = Array.isArray(name['given']) ? name['given'].map(text) : [];
  return ([...given, text(name['family'])].filter(Boolean).join(' ') || text(name['text'])).slice(
    0,
    200,
  );
}

/** A FHIR date or dateTime as a day. A year or a month alone is no day. */
function dayIn(at: string, zone: Zone): Day | undefined {
  return dayWritten(at) ?? dayOfMoment(at, zone);
}
