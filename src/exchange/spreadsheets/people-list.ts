import { identifierFault } from '../../care/people/identifier.ts';
import type { Policy } from '../../care/policy/policy.ts';
import type { Day } from '../../care/time.ts';
import type { DateForm } from './dates.ts';
import { readDay } from './dates.ts';
import type { Columns, Headings } from './guess-columns.ts';
import type { Cells } from './read-rows.ts';
import { readRows } from './read-rows.ts';
import type { Row } from './read-table.ts';
import type { ReadRows } from './row-problem.ts';

/** What a list of people may hold. A name stands in one column, or in two. */
export const personColumns = [
  'name',
  'given',
  'family',
  'called',
  'born',
  'room',
  'unit',
  'identifier',
  'note',
] as const;
export type PersonColumn = (typeof personColumns)[number];

export const personHeadings: Headings<PersonColumn> = {
  given: ['first name', 'first names', 'forename', 'forenames', 'given name', 'given names'],
  family: ['surname', 'last name', 'family name'],
  called: ['known as', 'preferred name', 'likes to be called', 'called', 'nickname'],
  born: ['date of birth', 'dob', 'birth date', 'birthdate', 'birthday', 'born'],
  room: ['room', 'room number', 'room no', 'flat', 'bed'],
  unit: ['unit', 'wing', 'floor', 'house', 'area', 'part of the house'],
  identifier: ['nhs number', 'nhs no', 'nhs', 'identifier', 'number', 'reference', 'ref', 'id'],
  note: ['note', 'notes', 'comment', 'comments', 'remark', 'remarks'],
  name: ['name', 'full name', 'resident', 'tenant', 'person', 'client', 'service user'],
};

/** "Corwen Vale" as it stands, or "Vale, Corwen" turned round. */
export type NameForm = 'as-written' | 'family-first';

export interface ReadAs {
  readonly columns: Columns<PersonColumn>;
  readonly dateForm?: DateForm | undefined;
  readonly nameForm?: NameForm | undefined;
  /** How policy says that a person's number is made; without it any number is taken. */
  readonly identifier?: Policy['identifier'];
}

export interface ListedPerson {
  readonly name: string;
  readonly called: string;
  readonly born: Day | '';
  readonly room: string;
  readonly unit: string;
  readonly identifier: string;
  readonly note: string;
}

const EARLIEST_BIRTH = '1900-01-01';

/** A list of people, row by row. `today` is the day after which nobody is born yet. */
export const readPeople = (
  table: { readonly rows: readonly Row[]; readonly headings: Row },
  as: ReadAs,
  today: Day,
): ReadRows<ListedPerson, PersonColumn> =>
  readRows(table, as.columns, {
    one: (cells) => ({
      name: nameIn(cells, as),
      called: cells.text('called'),
      born: birthIn(cells, { form: as.dateForm, today }),
      room: cells.text('room'),
      unit: cells.text('unit'),
      identifier: numberIn(cells, as),
      note: cells.text('note', 2000),
    }),
    same: ({ name, born }) => (name === '' ? undefined : `${name.toLocaleLowerCase('en')} ${born}`),
  });

function nameIn(cells: Cells<PersonColumn>, { nameForm }: ReadAs): string {
  const whole = cells.text('name');
  const [family, given] = whole.split(',').map((part) => part.trim());
  const turned = nameForm === 'family-first' && given ? `${given} ${family ?? ''}`.trim() : whole;
  const name = turned || `${cells.text('given')} ${cells.text('family')}`.trim();
  if (name === '') cells.wrong({ problem: 'name-missing' });
  return name;
}

/** The number by which the home or the health service knows somebody: a wrong one is told with its row. */
function numberIn(cells: Cells<PersonColumn>, { identifier }: ReadAs): string {
  const given = cells.text('identifier');
  const fault = identifier && identifierFault(identifier, given);
  if (fault !== undefined) {
    const problem = fault === 'malformed' ? 'number-malformed' : 'number-check-failed';
    cells.wrong({ problem, number: identifier?.name ?? '', given });
  }
  return given;
}

function birthIn(
  cells: Cells<PersonColumn>,
  { form, today }: { form: DateForm | undefined; today: Day },
): Day | '' {
  const given = cells.text('born');
  if (given === '') return '';
  const read = readDay(given, form);
  if (!read.ok) {
    cells.wrong({ problem: read.reason, column: 'born', given });
    return '';
  }
  if (read.day > today) cells.wrong({ problem: 'in-the-future', column: 'born', given });
  if (read.day < EARLIEST_BIRTH) cells.wrong({ problem: 'too-long-ago', column: 'born', given });
  return read.day;
}
