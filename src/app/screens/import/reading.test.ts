import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Trial } from '../../../../test/trial/home.ts';
import { everybody } from '../../../care/people/person.ts';
import type { Day } from '../../../care/time.ts';
import { peopleList, staffList } from './list-kind.ts';
import { questionsIn, readFile } from './reading.ts';

const bytes = (text: string) => new TextEncoder().encode(text);

function read(text: string, kind: typeof peopleList | typeof staffList = peopleList) {
  const reading = readFile(bytes(text), kind, {});
  if (!reading.ok) throw new Error(reading.reason);
  return { reading, questions: questionsIn(reading, kind, reading.guessed) };
}

describe('what is asked before a list is read', () => {
  it('nothing where nothing is open', () => {
    const { questions } = read('Name,DOB\nCorwen Vale,1951-03-14\n');
    expect(questions).toEqual({ dates: undefined, commaName: undefined, jobs: [] });
  });

  it('a date that can be read two ways, and a name with a comma', () => {
    const { questions } = read('Name;DOB\nVale, Corwen;03/04/1951\n');
    expect(questions.dates?.either).toBe('03/04/1951');
    expect(questions.commaName).toBe('Vale, Corwen');
  });

  it('words for a job that are not ours', () => {
    const { questions } = read('Name,Role\nPia,Worker\nSorrel,Night lead\n', staffList);
    expect(questions.jobs).toEqual(['night lead']);
  });

  it('headings are not among the dates or the jobs', () => {
    const { questions } = read('Staff,,\nName,Role,Swab\nPia,worker,2027-01-01\n', staffList);
    expect(questions).toMatchObject({ jobs: [], dates: undefined });
  });
});

it('what somebody picked outranks the guess', () => {
  const text = bytes('Name;Room\nVale, Corwen;3\n');
  const picked = readFile(text, peopleList, { separator: ',', headingsRow: 2 });
  expect(picked).toMatchObject({ separator: ',', headings: { row: 2 } });
});

describe('whatever the file', () => {
  const text = fc.array(
    fc.array(
      fc.oneof(
        fc.string({ maxLength: 10 }),
        fc.constantFrom('Oriel Finch', 'Vale, Corwen', '03/04/1951', '1951-03-14', '"', 'worker'),
      ),
      { maxLength: 5 },
    ),
    { maxLength: 8 },
  );
  const file = fc.oneof(
    fc.uint8Array({ maxLength: 300 }),
    text.map((rows) => bytes(['Name,DOB,Role', ...rows.map((row) => row.join(','))].join('\r\n'))),
  );
  const told = {
    columns: {},
    nameForm: 'family-first' as const,
    roles: new Map(),
  };

  it('it never throws, and what is kept is every good row that was ticked, or nothing', () => {
    fc.assert(
      fc.property(file, fc.constantFrom('day-first' as const, undefined), (given, dateForm) => {
        const trial = new Trial();
        const reading = readFile(given, peopleList, {});
        if (!reading.ok) return;
        questionsIn(reading, peopleList, reading.guessed);
        const rows = peopleList.read(
          { rows: reading.table.rows, headings: reading.headings },
          { ...told, columns: reading.guessed, dateForm },
          '2026-03-03' as Day,
        );
        const values = rows.good.map(({ value }) => value);
        const outcome = peopleList.keep(trial.home, values, trial.doing);
        const kept = outcome.ok ? values.length : 0;
        if (outcome.ok) trial.must(outcome);
        expect(everybody(trial.home)).toHaveLength(kept);
        // A row that was read as good is never turned away afterwards.
        expect(outcome.ok).toBe(values.length > 0);
      }),
      { numRuns: 300 },
    );
  });
});
