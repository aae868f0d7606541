import * as v from 'valibot';
import { factId, staffId, testId } from '../ids.ts';
import { code, how, kind, line, replaces, word } from '../kind.ts';
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

export const resultFacts = {
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
      how,
      /** Codes nearly like a typed one, which a second person (in `with`) compared and ruled out. */
      near: v.exactOptional(v.array(code)),
      matched: v.picklist(['born', 'name', 'reference', 'none']),
      reported: day,
      replaces,
    },
    files: (data) => [
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
