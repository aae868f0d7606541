import type { Encoding } from '../../../exchange/spreadsheets/decode.ts';
import type { PersonColumn } from '../../../exchange/spreadsheets/people-list.ts';
import type { Separator } from '../../../exchange/spreadsheets/separator.ts';
import type { StaffColumn } from '../../../exchange/spreadsheets/staff-list.ts';
import type { LanguageTools } from '../language-tools.ts';

/** Bringing in a list from a spreadsheet: three steps, and what was wrong with a row. */
export function importWords({ dates, plural }: LanguageTools) {
  const encodings: Record<Encoding, string> = {
    'utf-8': 'UTF-8',
    'windows-1252': 'Windows-1252',
    'utf-16le': 'UTF-16 (LE)',
    'utf-16be': 'UTF-16 (BE)',
  };
  const separators: Record<Separator, string> = {
    ',': 'a comma',
    ';': 'a semicolon',
    '\t': 'a tab',
  };
  const columns: Record<PersonColumn | StaffColumn, string> = {
    name: 'Full name',
    given: 'First name',
    family: 'Surname',
    called: 'Likes to be called',
    born: 'Birth date',
    room: 'Room',
    unit: 'Part of the home',
    identifier: 'Health service number',
    note: 'Note',
    role: 'Role',
    phone: 'Phone',
    swab: 'Swab training ends',
    record: 'Record training ends',
  };
  const rows = (count: number) => plural(count, { one: '1 row', other: `${count} rows` });
  return {
    titles: { people: 'Bring in people', staff: 'Bring in staff' },
    back: { people: 'Back to People', staff: 'Back to Staff' },
    steps: { file: 'File', columns: 'Columns', check: 'Check' },
    stepsName: 'Bringing in a list',
    columns,
    encodings,
    separators,
    file: {
      label: 'Pick the file',
      hint: 'A list saved as CSV, of at most 10 MB and 2,000 rows. The file stays on this tablet. Nothing is kept until you say so.',
      reading: 'Reading the file.',
      bad: {
        empty: 'There is nothing in that file. Pick another.',
        'too-large': 'That file is larger than 10 MB. Pick the list alone.',
        workbook: 'That is a whole workbook. Save the list as CSV, then pick that.',
        'not-text': 'That file is not a list. Save the list as CSV, then pick that.',
        unreadable: 'The tablet could not read that file. Try again.',
      },
    },
    map: {
      title: 'What is in the columns?',
      from: (file: string) => `From ${file}.`,
      unsure: 'Look at the names below.',
      unsureWhy: (encoding: string) =>
        `The file does not say how its letters are written. It was read as ${encoding}.`,
      encoding: 'Letters are written as',
      separator: 'Columns are parted by',
      headings: 'Headings stand in row',
      sample: 'The first rows, as read',
      column: (place: number) => `Column ${place}`,
      option: (place: number, heading: string) =>
        heading === '' ? `Column ${place}` : `${place}: ${heading}`,
      none: 'Not in this list',
      which: 'Which column holds what?',
      dateNeeded: 'Say how the dates are written.',
      nameFormNeeded: 'Say how the names are written.',
      roleNeeded: (word: string) => `Say what "${word}" may do here.`,
      nameNeeded: 'Pick the column with the name.',
      next: 'Check the rows',
      other: 'Pick another file',
      dateAsk: (example: string) => `How is ${example} to be read?`,
      dateMixed: 'The dates are written in two ways. Which one is right?',
      dateHint: 'A wrong guess would give people a wrong birthday. Look at the papers.',
      dateClue: (example: string) => `One date can only be read one way: ${example}.`,
      dayFirst: 'Day first',
      monthFirst: 'Month first',
      asDay: (form: string, day: string) => `${form}: ${dates.date(day)}`,
      nameAsk: (example: string) => `How is "${example}" written?`,
      nameAsWritten: 'Keep it just so',
      nameTurned: (turned: string) => `Surname first: keep "${turned}"`,
      roleAsk: (word: string) => `What may "${word}" do here?`,
      roleHint: 'A worker may do the least. Give more only where it is right.',
    },
    check: {
      title: 'Look before you keep',
      good: (count: number) => `${rows(count)} can be kept.`,
      bad: (count: number) => `${rows(count)} cannot be kept as they stand.`,
      likely: (count: number) =>
        plural(count, {
          one: '1 is most likely here already, so it is left out.',
          other: `${count} are most likely here already, so they are left out.`,
        }),
      empty: (count: number) => `${rows(count)} were empty.`,
      broken: (row: number) => `A quote opens in row ${row} and never closes.`,
      brokenWhy: 'Nothing from that row on was read. Put it right in the file.',
      beyond: (count: number) => `${rows(count)} past the limit were not read.`,
      badTitle: 'Rows that cannot be kept',
      row: (row: number) => `Row ${row}`,
      goodTitle: 'Rows to keep',
      pick: (name: string, row: number) => `Keep ${name}, row ${row}`,
      rowHead: 'Row',
      keepHead: 'Keep',
      likelyHead: 'Here already?',
      press: (count: number) => plural(count, { one: 'Keep 1', other: `Keep ${count}` }),
      back: 'Back to the columns',
      none: 'Nothing is picked to keep.',
    },
    done: {
      title: (count: number) => plural(count, { one: '1 was kept', other: `${count} were kept` }),
      rest: 'These were not kept. Put them right in the file and bring it in again.',
      restNone: 'Every row was kept or left out by you.',
    },
    likeness: {
      'same-name-and-birth': (name: string) => `${name}: same name, same birth date`,
      'same-identifier': (name: string) => `${name}: same number`,
      'same-name': (name: string) => `${name}: same name`,
    },
    problems: {
      nameMissing: 'There is no name.',
      tooManyCells: (extra: number) =>
        plural(extra, {
          one: 'There is 1 cell too many. Is a comma inside a name?',
          other: `There are ${extra} cells too many. Is a comma inside a name?`,
        }),
      unreadableSign: (column: string) => `${column}: a sign could not be read.`,
      tooLong: (column: string, most: number) => `${column}: more than ${most} signs.`,
      notADate: (column: string, given: string) => `${column}: "${given}" is not a date.`,
      twoDigitYear: (column: string, given: string) =>
        `${column}: "${given}" has a year of two digits. Write four.`,
      noSuchDay: (column: string, given: string) => `${column}: there is no day "${given}".`,
      askForm: (column: string, given: string) => `${column}: "${given}" can be read two ways.`,
      inTheFuture: (column: string, given: string) => `${column}: "${given}" has not come yet.`,
      tooLongAgo: (column: string, given: string) => `${column}: "${given}" is too long ago.`,
      numberMalformed: (number: string, given: string) =>
        `"${given}" does not look like a ${number}.`,
      numberCheckFailed: (number: string, given: string) =>
        `${number}: one sign of "${given}" is wrong, or two have changed places.`,
      roleUnknown: (given: string) => `Role: "${given}" is not known here.`,
      sameAsRow: (row: number) => `The same as row ${row}.`,
    },
  };
}
