import * as v from 'valibot';
import { factId, reportId, staffId, testId } from '../ids.ts';
import { code, kind, line, replaces, word } from '../kind.ts';
import { day, instant } from '../time.ts';

/** `withdrawn`: the laboratory took its result back; there is none. */
export const outcomes = ['positive', 'negative', 'void', 'inconclusive', 'withdrawn'] as const;
export type Outcome = (typeof outcomes)[number];

/** What has to happen after a result. Which of them, by when and by which role is policy. */
export const actionKinds = [
  'tell-person',
  'tell-representative',
  'tell-doctor',
  'tell-health-protection',
  'isolate',
  'find-contacts',
  'test-home',
  'test-again',
  'ask-laboratory',
] as const;
export type ActionKind = (typeof actionKinds)[number];

/** What a column of the upload file may hold. `fixed` is the same text on every line. */
export const uploadParts = [
  'code',
  'name',
  'first-names',
  'last-name',
  'born',
  'identifier',
  'swab-day',
  'swab-time',
  'sites',
  'fixed',
] as const;
export type UploadPart = (typeof uploadParts)[number];

export const dateForms = ['yyyy-mm-dd', 'dd/mm/yyyy', 'dd.mm.yyyy', 'mm/dd/yyyy'] as const;
export type DateForm = (typeof dateForms)[number];
export const encodings = ['utf-8', 'utf-8-bom', 'windows-1252'] as const;
export type Encoding = (typeof encodings)[number];
export const separators = ['comma', 'semicolon', 'tab'] as const;
export type Separator = (typeof separators)[number];

/** Through which door a report came in. */
export const reportSources = ['csv', 'xlsx', 'fhir', 'hl7'] as const;
export type ReportSource = (typeof reportSources)[number];

export const reportVerdicts = ['belongs', 'set-aside'] as const;
export type ReportVerdict = (typeof reportVerdicts)[number];

export const resultFacts = {
  /**
   * A report as it came, whatever it says. Codes that no ledger can hold, words and what identifies the
   * person stand in the private part. What follows from it is concluded (tray.ts), or a result.recorded.
   */
  'report.received': kind({
    data: {
      report: reportId,
      codes: v.pipe(v.array(code), v.maxLength(6)),
      outcome: v.exactOptional(v.picklist(outcomes)),
      status: v.picklist(['final', 'preliminary', 'corrected', 'withdrawn']),
      reported: v.exactOptional(day),
      source: v.picklist(reportSources),
      tests: v.pipe(v.array(word), v.maxLength(20)),
      /** A test code that is not known here: asked about, not guessed. */
      unknownTest: v.exactOptional(v.boolean()),
    },
    private: {
      name: v.pipe(v.string(), v.maxLength(200)),
      born: v.pipe(v.string(), v.maxLength(60)),
      said: v.pipe(v.string(), v.maxLength(200)),
      /** The laboratory's own number, and the codes that were no codes. */
      number: v.pipe(v.string(), v.maxLength(200)),
      laboratory: v.pipe(v.string(), v.maxLength(200)),
    },
    files: (data) => [
      ['report', data.report],
      ...data.codes.map((each) => ['report', `code/${each}`] as const),
    ],
  }),
  /** A named person decides about a report that did not fit: it belongs to this test, or it is set aside. */
  'report.settled': kind({
    data: {
      report: reportId,
      verdict: v.picklist(reportVerdicts),
      test: v.exactOptional(testId),
      replaces,
    },
    private: { reason: line },
    files: (data) => [['report', data.report]],
  }),
  /** How the laboratory's list is made, remembered: headings, how dates are written, what its words mean. */
  'report.mapping': kind({
    data: {
      columns: v.pipe(
        v.array(v.strictObject({ holds: word, title: v.pipe(v.string(), v.maxLength(200)) })),
        v.maxLength(30),
      ),
      dates: v.exactOptional(v.picklist(['day-first', 'month-first'])),
      words: v.pipe(
        v.array(v.strictObject({ says: word, means: v.picklist(outcomes) })),
        v.maxLength(60),
      ),
      replaces,
    },
    files: () => [['policy', 'report-mapping']],
  }),
  /** The file the reporting body takes for one kind of test: its columns, set once by the service. */
  'upload.set': kind({
    data: {
      test: word,
      columns: v.pipe(
        v.array(
          v.strictObject({
            holds: v.picklist(uploadParts),
            title: word,
            text: v.exactOptional(word),
          }),
        ),
        v.minLength(1),
        v.maxLength(30),
      ),
      dates: v.picklist(dateForms),
      encoding: v.picklist(encodings),
      separator: v.picklist(separators),
      replaces,
    },
    files: () => [['policy', 'upload']],
  }),
  'test.registered': kind({
    data: { test: testId, reference: word, on: day, replaces },
    files: (data) => [
      ['test', data.test],
      ['reference', data.reference],
    ],
  }),
  'registration.failed': kind({
    data: {
      test: testId,
      why: v.picklist(['site-down', 'no-connection', 'refused', 'missing-details', 'other']),
      nextTry: instant,
      who: staffId,
      replaces,
    },
    files: (data) => [['test', data.test]],
  }),
  /** A result as it was given for a code. `matched` names the second identifier that was compared. */
  'result.recorded': kind({
    data: {
      code,
      test: v.exactOptional(testId),
      outcome: v.picklist(outcomes),
      how: v.picklist(['scanned', 'typed-twice', 'file']),
      /** Codes nearly like a typed one, which a second person (in `with`) compared and ruled out. */
      near: v.exactOptional(v.array(code)),
      /** `settled`: nothing matched by itself; a named person decided that it belongs here. */
      matched: v.picklist(['born', 'name', 'reference', 'settled', 'none']),
      reported: day,
      report: v.exactOptional(reportId),
      replaces,
    },
    files: (data) => [
      ...(data.report === undefined ? [] : [['report', data.report] as const]),
      ['code', data.code],
      ...(data.test === undefined ? [] : [['test', data.test] as const]),
    ],
  }),
  'result.chased': kind({
    data: { test: testId, next: v.exactOptional(instant), replaces },
    private: { whom: line, said: line },
    files: (data) => [['test', data.test]],
  }),
  /** Who does it, and by when. The action rests on one result: a correction opens it again. */
  'action.named': kind({
    data: {
      test: testId,
      result: factId,
      action: v.picklist(actionKinds),
      who: staffId,
      due: instant,
      replaces,
    },
    files: (data) => [['test', data.test]],
  }),
  'action.done': kind({
    data: {
      test: testId,
      result: factId,
      action: v.picklist(actionKinds),
      outcome: v.picklist(['done', 'not-needed']),
      replaces,
    },
    private: { note: v.pipe(v.string(), v.maxLength(500)) },
    files: (data) => [['test', data.test]],
  }),
};
