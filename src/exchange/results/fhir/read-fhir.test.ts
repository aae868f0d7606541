import fc from 'fast-check';
import { Fhir } from 'fhir/fhir.js';
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../../care/results/facts.ts';
import { outcomes } from '../../../care/results/facts.ts';
import type { Day } from '../../../care/time.ts';
import { readFhir } from './read-fhir.ts';
import type { ResultToTell } from './write-fhir.ts';
import { writeFhir } from './write-fhir.ts';

const zone = 'Europe/London';
const read = (value: unknown) =>
  readFhir(typeof value === 'string' ? value : JSON.stringify(value), { zone });
const must = (value: unknown) => {
  const found = read(value);
  if (!found.ok) throw new Error(`${found.problem}: ${found.detail}`);
  return found.reports;
};

const told = (outcome: Outcome = 'negative', more: Partial<ResultToTell> = {}): ResultToTell => ({
  ...{ code: 'KQT00000019', outcome, corrects: false, reported: '2026-03-04' as Day },
  ...{ name: 'Oriel Finch', born: '1941-06-02' as Day, reference: 'R-100' },
  ...{ test: { code: '94500-6', finds: 'SARS-CoV-2 RNA' }, testName: 'Respiratory virus swab' },
  ...more,
});

/** A report as a laboratory might send it by itself, with everything inside it. */
const contained = {
  resourceType: 'DiagnosticReport',
  identifier: [{ value: 'L-77' }],
  status: 'final',
  code: { coding: [{ system: 'http://loinc.org', code: '92142-9' }] },
  subject: { reference: '#p' },
  issued: '2026-03-04T23:30:00-05:00',
  performer: [{ display: 'The demo laboratory' }],
  specimen: [{ reference: '#s' }],
  result: [{ reference: '#o' }],
  contained: [
    {
      resourceType: 'Patient',
      id: 'p',
      name: [{ family: 'Finch', given: ['Oriel'] }],
      birthDate: '1941-06-02',
    },
    {
      resourceType: 'Specimen',
      id: 's',
      identifier: [{ value: 'KQT00000019' }],
      subject: { reference: '#p' },
    },
    {
      ...{ resourceType: 'Observation', id: 'o', status: 'final', subject: { reference: '#p' } },
      code: { coding: [{ system: 'http://loinc.org', code: '92142-9' }] },
      valueCodeableConcept: {
        coding: [
          {
            system: 'http://snomed.info/sct',
            code: '260385009',
            display: 'Negative (qualifier value)',
          },
        ],
      },
    },
  ],
};

describe('FHIR R4', () => {
  it('reads a report with everything contained, in the zone of the service', () => {
    expect(must(contained)).toEqual([
      {
        place: { at: 'pointer', pointer: '' },
        codes: ['KQT00000019'],
        outcome: 'negative',
        said: 'Negative (qualifier value)',
        status: 'final',
        reported: '2026-03-05',
        name: 'Oriel Finch',
        born: '1941-06-02',
        reference: '',
        report: 'L-77',
        laboratory: 'The demo laboratory',
        tests: ['92142-9'],
        asks: [],
      },
    ]);
  });
  it.each(outcomes)('reads what it writes: %s', (outcome) => {
    const [report] = must(writeFhir([told(), told(outcome)])).slice(1);
    expect(report).toMatchObject({
      ...{ outcome, codes: ['KQT00000019'], born: '1941-06-02', name: 'Oriel Finch' },
      ...{ reported: '2026-03-04', reference: 'R-100', tests: ['94500-6'], asks: [] },
      place: { at: 'pointer', pointer: '/entry/4/resource' },
    });
  });
  // The npm package fhir 4.12.0 checks against the R4 structure definitions; it is no code of ours.
  it('what is read and what is written passes an independent validator of R4', () => {
    const validator = new Fhir();
    const all = [contained, writeFhir(outcomes.map((outcome) => told(outcome))), writeFhir([])];
    for (const resource of all) {
      const found = validator.validate(resource, { errorOnUnexpected: true });
      expect(found.messages.filter(({ severity }) => String(severity) === 'error')).toEqual([]);
      expect(found.valid).toBe(true);
    }
    const wrong = validator.validate({ ...contained, status: 'finished' });
    expect(wrong.messages.length).toBeGreaterThan(0);
  });
  it('reads NDJSON, with the line of each', () => {
    const bundle = writeFhir([told('positive')]) as { entry: { resource: object }[] };
    const lines = bundle.entry.map(({ resource }) => JSON.stringify(resource));
    const [report] = must(`\uFEFF${lines.join('\n')}\n`);
    expect(report).toMatchObject({ outcome: 'positive', name: 'Oriel Finch', place: { line: 1 } });
    expect(read(`${lines.join('\n')}\n{"resourceType":`)).toMatchObject({
      ok: false,
      place: { at: 'line', line: 5, column: 17 },
    });
  });
  it('reads an observation by itself, and asks for what it does not say', () => {
    const [report] = must({
      resourceType: 'Observation',
      status: 'final',
      code: { coding: [{ system: 'http://loinc.org', code: '1234-5' }] },
      valueString: 'Hmm',
    });
    expect(report?.asks.map(({ ask }) => ask)).toEqual([
      ...['code-missing', 'test-unknown', 'words-unknown', 'day-missing'],
    ]);
  });
  it('anything found in one of several things tested makes the tube positive; one not known leaves it open', () => {
    const panel = (values: string[]) => ({
      ...contained,
      result: values.map((_, i) => ({ reference: `#o${i}` })),
      contained: [
        ...contained.contained.slice(0, 2),
        ...values.map((valueString, i) => ({
          resourceType: 'Observation',
          id: `o${i}`,
          status: 'final',
          valueString,
        })),
      ],
    });
    expect(must(panel(['negative', 'positive', 'what']))[0]?.outcome).toBe('positive');
    expect(must(panel(['negative', 'what']))[0]?.outcome).toBeUndefined();
    expect(must(panel(['negative', 'void']))[0]?.outcome).toBe('void');
    expect(must(panel(['negative', 'not detected']))[0]?.outcome).toBe('negative');
  });
  it('says where a file is cut off or broken', () => {
    const json = JSON.stringify(contained, undefined, 1);
    const cut = read(json.slice(0, 300));
    expect(cut.ok ? '' : cut.problem).toMatch(/truncated|broken/);
    expect(read('{\n "a": 1,\n "b": ?}')).toMatchObject({
      ok: false,
      place: { line: 3, column: 7 },
    });
    expect(read('['.repeat(100))).toMatchObject({ ok: false, problem: 'unsafe' });
    expect(read({ resourceType: 'Patient' })).toMatchObject({ ok: false, problem: 'not-results' });
    expect(read('')).toMatchObject({ ok: false, problem: 'empty' });
  });
  it('never throws, whatever JSON comes', () => {
    const kind = fc.constantFrom(
      'DiagnosticReport',
      'Observation',
      'Bundle',
      'Patient',
      'Specimen',
    );
    const key = fc.constantFrom(
      'result',
      'contained',
      'code',
      'coding',
      'issued',
      'specimen',
      'status',
      'entry',
      'resource',
      'subject',
      'name',
      'given',
      'reference',
    );
    fc.assert(
      fc.property(
        kind,
        fc.dictionary(key, fc.jsonValue()),
        (resourceType, rest) => typeof read({ ...rest, resourceType }).ok === 'boolean',
      ),
    );
    fc.assert(fc.property(fc.json(), (json) => typeof read(json).ok === 'boolean'));
  });
});

describe('an observation that was entered in error (Observation.status, FHIR R4)', () => {
  const concept = (code: string, display: string) => ({
    coding: [{ system: 'http://snomed.info/sct', code, display }],
  });
  const seen = (id: string, status: string, value: ReturnType<typeof concept>) => ({
    fullUrl: `urn:${id}`,
    resource: {
      ...{ resourceType: 'Observation', id, status, valueCodeableConcept: value },
      code: { coding: [{ system: 'http://loinc.org', code: id === 'a' ? '94500-6' : '92142-9' }] },
    },
  });
  const report = (status: string, parts: readonly (readonly [string, string])[]) => ({
    resourceType: 'Bundle',
    type: 'collection',
    entry: [
      {
        fullUrl: 'urn:r',
        resource: {
          ...{ resourceType: 'DiagnosticReport', id: 'r', status, code: {} },
          issued: '2026-03-04T12:00:00Z',
          result: parts.map((_, at) => ({ reference: `urn:${'ab'[at] ?? ''}` })),
        },
      },
      ...parts.map(([of, says], at) =>
        seen(
          'ab'[at] ?? '',
          of,
          says === 'positive' ? concept('10828004', 'Positive') : concept('260385009', 'Negative'),
        ),
      ),
    ],
  });
  const wrong = ['entered-in-error', 'positive'] as const;

  it('says nothing of the rest of its report', () => {
    for (const status of ['final', 'corrected', 'amended'])
      expect(must(report(status, [wrong, ['final', 'negative']]))[0]).toMatchObject({
        ...{ outcome: 'negative', said: 'Negative', status: 'corrected', tests: ['92142-9'] },
      });
  });
  it('takes the whole back where nothing else is left', () => {
    expect(must(report('final', [wrong]))[0]).toMatchObject({ outcome: 'withdrawn' });
  });
  it('does not make a final result of what is preliminary beside it', () => {
    expect(must(report('final', [wrong, ['preliminary', 'negative']]))[0]).toMatchObject({
      status: 'preliminary',
    });
  });
  it('is not one that was cancelled: what was not measured leaves the whole void', () => {
    const both = [['cancelled', 'positive'] as const, ['final', 'negative'] as const];
    expect(must(report('final', both))[0]).toMatchObject({ outcome: 'void', status: 'final' });
  });
});
