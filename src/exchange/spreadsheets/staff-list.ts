import type { Role, Skill } from '../../care/staff/facts.ts';
import { roles } from '../../care/staff/facts.ts';
import type { Day } from '../../care/time.ts';
import type { DateForm } from './dates.ts';
import { readDay } from './dates.ts';
import type { Columns, Headings } from './guess-columns.ts';
import type { Cells } from './read-rows.ts';
import { readRows } from './read-rows.ts';
import type { Row } from './read-table.ts';
import type { ReadRows } from './row-problem.ts';

/** What a list of staff may hold. `swab` and `record` are the last day of that training. */
export const staffColumns = [
  'name',
  'given',
  'family',
  'called',
  'role',
  'phone',
  'swab',
  'record',
] as const;
export type StaffColumn = (typeof staffColumns)[number];

export const staffHeadings: Headings<StaffColumn> = {
  given: ['first name', 'first names', 'forename', 'forenames', 'given name', 'given names'],
  family: ['surname', 'last name', 'family name'],
  called: ['known as', 'preferred name', 'likes to be called', 'called', 'nickname'],
  role: ['role', 'job', 'job title', 'post', 'position', 'grade'],
  phone: ['phone', 'telephone', 'mobile', 'tel', 'phone number', 'mobile number'],
  swab: ['may swab until', 'swab until', 'swab training', 'swab training ends', 'swab'],
  record: ['may record until', 'record until', 'record training', 'record training ends', 'record'],
  name: ['name', 'full name', 'colleague', 'employee', 'staff name', 'staff member'],
};

export interface ReadStaffAs {
  readonly columns: Columns<StaffColumn>;
  readonly dateForm?: DateForm | undefined;
  /** What the service's own words for a job mean here, by the word in lower case. */
  readonly roles: ReadonlyMap<string, Role>;
}

export interface ListedMember {
  readonly name: string;
  readonly called: string;
  readonly phone: string;
  readonly role: Role;
  readonly competence: Partial<Record<Skill, Day>>;
}

/** Job words in a column, in the order met, each once; ours mean themselves, the rest are asked about. */
export function jobWords(rows: readonly Row[], column: number | undefined): string[] {
  if (column === undefined) return [];
  const words = rows.map(({ cells }) => plainWord(cells[column] ?? '')).filter(Boolean);
  return [...new Set(words)];
}

export const roleOf = (word: string): Role | undefined =>
  roles.find((role) => role === plainWord(word));

const plainWord = (text: string): string =>
  text.normalize('NFC').replaceAll(/\s+/gu, ' ').trim().toLocaleLowerCase('en');

/** A list of staff, row by row. Somebody without a role in the list is a worker: the least a role allows. */
export const readStaff = (
  table: { readonly rows: readonly Row[]; readonly headings: Row },
  as: ReadStaffAs,
): ReadRows<ListedMember, StaffColumn> =>
  readRows(table, as.columns, {
    one: (cells) => ({
      name: nameIn(cells),
      called: cells.text('called'),
      phone: cells.text('phone'),
      role: roleIn(cells, as),
      competence: {
        ...endIn(cells, 'swab', as.dateForm),
        ...endIn(cells, 'record', as.dateForm),
      },
    }),
    same: ({ name, phone }) =>
      name === '' ? undefined : `${name.toLocaleLowerCase('en')} ${phone}`,
  });

function nameIn(cells: Cells<StaffColumn>): string {
  const name = cells.text('name') || `${cells.text('given')} ${cells.text('family')}`.trim();
  if (name === '') cells.wrong({ problem: 'name-missing' });
  return name;
}

function roleIn(cells: Cells<StaffColumn>, as: ReadStaffAs): Role {
  const given = cells.text('role');
  if (given === '') return 'worker';
  const role = roleOf(given) ?? as.roles.get(plainWord(given));
  if (role === undefined) cells.wrong({ problem: 'role-unknown', given });
  return role ?? 'worker';
}

function endIn(
  cells: Cells<StaffColumn>,
  column: Skill,
  form: DateForm | undefined,
): Partial<Record<Skill, Day>> {
  const given = cells.text(column);
  if (given === '') return {};
  const read = readDay(given, form);
  if (read.ok) return { [column]: read.day };
  cells.wrong({ problem: read.reason, column, given });
  return {};
}
