import type { Home } from '../../../care/home.ts';
import { everybody } from '../../../care/people/person.ts';
import type { Policy } from '../../../care/policy/policy.ts';
import type { Role } from '../../../care/staff/facts.ts';
import { everyMember } from '../../../care/staff/member.ts';
import type { Day } from '../../../care/time.ts';
import type { DateForm } from '../../../exchange/spreadsheets/dates.ts';
import type { Columns, Headings } from '../../../exchange/spreadsheets/guess-columns.ts';
import type { Likeness } from '../../../exchange/spreadsheets/likely-here.ts';
import { likelyHere } from '../../../exchange/spreadsheets/likely-here.ts';
import type { ListedPerson, NameForm } from '../../../exchange/spreadsheets/people-list.ts';
import {
  personColumns,
  personHeadings,
  readPeople,
} from '../../../exchange/spreadsheets/people-list.ts';
import type { Row } from '../../../exchange/spreadsheets/read-table.ts';
import type { ReadRows } from '../../../exchange/spreadsheets/row-problem.ts';
import type { ListedMember } from '../../../exchange/spreadsheets/staff-list.ts';
import {
  readStaff,
  staffColumns,
  staffHeadings,
} from '../../../exchange/spreadsheets/staff-list.ts';
import type { Doing, Outcome } from '../../../procedures/doing.ts';
import { importPeople, importStaff } from '../../../procedures/import-records.ts';
import type { Words } from '../../words/en.ts';
import { paths } from '../paths.ts';

/** Everything a list may hold, of people or of staff. */
export type AnyColumn = (typeof personColumns)[number] | (typeof staffColumns)[number];

/** What somebody said about the columns of the file. */
export interface Told {
  readonly columns: Columns<AnyColumn>;
  readonly dateForm: DateForm | undefined;
  readonly nameForm: NameForm | undefined;
  readonly roles: ReadonlyMap<string, Role>;
  /** How the policy in force says that a person's number is made. */
  readonly identifier?: Policy['identifier'];
}

export interface Likely {
  readonly name: string;
  readonly why: Likeness;
}

/** One kind of list that can be brought in: what it may hold, how it is read, how it is kept. */
export interface ListKind<Value extends { readonly name: string }> {
  readonly kind: 'people' | 'staff';
  readonly columns: readonly AnyColumn[];
  readonly headings: Headings<AnyColumn>;
  readonly dateColumns: readonly AnyColumn[];
  readonly back: string;
  readonly read: (
    table: { readonly rows: readonly Row[]; readonly headings: Row },
    told: Told,
    today: Day,
  ) => ReadRows<Value, AnyColumn>;
  /** A cell of the preview, in words. */
  readonly cell: (value: Value, column: AnyColumn, words: Words) => string;
  readonly likely: (home: Home, value: Value) => Likely | undefined;
  readonly keep: (home: Home, values: readonly Value[], doing: Doing) => Outcome;
}

const dayOrEmpty = (day: Day | '' | undefined, { dates }: Words): string =>
  day ? dates.shortDate(day) : '';

export const peopleList: ListKind<ListedPerson> = {
  kind: 'people',
  columns: personColumns,
  headings: personHeadings as Headings<AnyColumn>,
  dateColumns: ['born'],
  back: paths.people,
  read: (table, told, today) => readPeople(table, told, today),
  cell: (value, column, words) => {
    if (column === 'born') return dayOrEmpty(value.born, words);
    return column in value ? value[column as 'name'] : '';
  },
  likely: (home, value) => {
    const found = likelyHere(everybody(home), value);
    return found && { name: found.known.name, why: found.why };
  },
  keep: (home, values, doing) =>
    importPeople(
      home,
      values.map(({ unit, ...fields }) => ({ unit, fields })),
      doing,
    ),
};

export const staffList: ListKind<ListedMember> = {
  kind: 'staff',
  columns: staffColumns,
  headings: staffHeadings as Headings<AnyColumn>,
  dateColumns: ['swab', 'record'],
  back: paths.staff,
  read: (table, told) => readStaff(table, told),
  cell: (value, column, words) => {
    if (column === 'swab' || column === 'record')
      return dayOrEmpty(value.competence[column], words);
    if (column === 'role') return words.roles[value.role];
    return column in value ? value[column as 'name'] : '';
  },
  likely: (home, value) => {
    const found = likelyHere(everyMember(home), value);
    return found && { name: found.known.name, why: found.why };
  },
  keep: (home, values, doing) =>
    importStaff(
      home,
      values.map(({ role, competence, ...fields }) => ({ fields, role, competence })),
      doing,
    ),
};
