import { describe, expect, it } from 'vitest';
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
