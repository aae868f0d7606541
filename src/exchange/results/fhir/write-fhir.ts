import type { Outcome } from '../../../care/results/facts.ts';
import type { Day } from '../../../care/time.ts';

/** A result to be told to another system. */
export interface ResultToTell {
  readonly code: string;
  readonly outcome: Outcome;
  readonly corrects: boolean;
  readonly reported: Day;
  readonly name: string;
  readonly born: Day | undefined;
  readonly reference: string;
  readonly test: { readonly code: string; readonly finds: string } | undefined;
  readonly testName: string;
}

const SNOMED = 'http://snomed.info/sct';
/** As in words.json, where each code's source stands. */
const codings: Readonly<Record<Outcome, { code: string; display: string } | undefined>> = {
  positive: { code: '10828004', display: 'Positive' },
  negative: { code: '260385009', display: 'Negative' },
  inconclusive: { code: '419984006', display: 'Inconclusive' },
  void: { code: '125154007', display: 'Specimen unsatisfactory for evaluation' },
  withdrawn: undefined,
};

/**
 * A FHIR R4 Bundle (collection): DiagnosticReport, Observation, Specimen and Patient for each result.
 * What this program writes it also reads.
 */
export const writeFhir = (results: readonly ResultToTell[]): object => ({
  resourceType: 'Bundle',
  type: 'collection',
  // R4 has no empty arrays.
  ...(results.length > 0 && { entry: results.flatMap(entriesFor) }),
});

function entriesFor(result: ResultToTell, at: number): object[] {
  const id = (what: string): string => `${what}-${at + 1}`;
  const url = (type: string, what: string): string =>
    `http://tallyround.invalid/${type}/${id(what)}`;
  const status =
    result.outcome === 'withdrawn' ? 'entered-in-error' : result.corrects ? 'corrected' : 'final';
  const code =
    result.test === undefined
      ? { text: result.testName }
      : {
          coding: [
            { system: 'http://loinc.org', code: result.test.code, display: result.test.finds },
          ],
          text: result.testName,
        };
  const coding = codings[result.outcome];
  const words = name(result.name);
  const about = {
    subject: { reference: `Patient/${id('patient')}` },
    status,
    code,
  };
  const resources: [string, string, object][] = [
    [
      ...(['DiagnosticReport', 'report'] as const),
      {
        ...about,
        issued: `${result.reported}T12:00:00Z`,
        specimen: [{ reference: `Specimen/${id('specimen')}` }],
        result: [{ reference: `Observation/${id('observation')}` }],
        ...(result.reference !== '' && { basedOn: [{ identifier: { value: result.reference } }] }),
      },
    ],
    [
      ...(['Observation', 'observation'] as const),
      {
        ...about,
        specimen: { reference: `Specimen/${id('specimen')}` },
        ...(coding === undefined
          ? { dataAbsentReason: { text: 'Taken back by the laboratory' } }
          : { valueCodeableConcept: { coding: [{ system: SNOMED, ...coding }] } }),
      },
    ],
    [
      ...(['Specimen', 'specimen'] as const),
      { subject: about.subject, container: [{ identifier: [{ value: result.code }] }] },
    ],
    [
      ...(['Patient', 'patient'] as const),
      {
        ...(words && { name: [words] }),
        ...(result.born !== undefined && { birthDate: result.born }),
      },
    ],
  ];
  return resources.map(([type, what, rest]) => ({
    fullUrl: url(type, what),
    resource: { resourceType: type, id: id(what), ...rest },
  }));
}

function name(whole: string): object | undefined {
  const words = whole.trim().split(/\s+/).filter(Boolean);
  const [family, given] = [words.at(-1), words.slice(0, -1)];
  return family === undefined
    ? undefined
    : { text: words.join(' '), family, ...(given.length > 0 && { given }) };
}
