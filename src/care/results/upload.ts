import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import { personOf } from '../people/person.ts';
import type { Day } from '../time.ts';
import { dayOf, wallTime } from '../time.ts';
import type { DateForm, UploadPart } from './facts.ts';
import type { ToRegister } from './registering.ts';

export type UploadSetting = FactOf<'upload.set'>;

/** How the file for one kind of test is made, as the service last set it. */
export const uploadFor = (home: Home, test: string): UploadSetting | undefined =>
  standing(factsIn(home, 'policy', 'upload'), 'upload.set').findLast(
    ({ data }) => data.test === test,
  );

/** A calendar day written as another body wants it. */
export function writeDay(day: Day, form: DateForm): string {
  const [year = '', month = '', date = ''] = day.split('-');
  switch (form) {
    case 'yyyy-mm-dd':
      return day;
    case 'dd/mm/yyyy':
      return `${date}/${month}/${year}`;
    case 'dd.mm.yyyy':
      return `${date}.${month}.${year}`;
    case 'mm/dd/yyyy':
      return `${month}/${date}/${year}`;
  }
}

/** One line for each test, a cell for each column, as plain text. */
export const uploadRows = (
  home: Home,
  { columns, dates }: Pick<UploadSetting['data'], 'columns' | 'dates'>,
  tests: readonly ToRegister[],
): string[][] =>
  tests.map((each) =>
    columns.map(({ holds, text }) =>
      holds === 'fixed' ? (text ?? '') : cell(home, each, { holds, dates }),
    ),
  );

function cell(
  home: Home,
  { test, person: id }: ToRegister,
  { holds, dates }: { holds: Exclude<UploadPart, 'fixed'>; dates: DateForm },
): string {
  const person = personOf(home, id);
  const { zone } = home.service;
  switch (holds) {
    case 'code':
      return test.code ?? '';
    case 'name':
      return person.name;
    case 'first-names':
      return person.name.split(/\s+/).slice(0, -1).join(' ');
    case 'last-name':
      return person.name.split(/\s+/).at(-1) ?? '';
    case 'born':
      return person.born === undefined ? '' : writeDay(person.born, dates);
    case 'identifier':
      return person.identifier;
    case 'swab-day':
      return test.taken === undefined ? '' : writeDay(dayOf(test.taken.at, zone), dates);
    case 'swab-time':
      return test.taken === undefined ? '' : wallTime(test.taken.at, zone);
    case 'sites':
      return [...new Set(test.taken?.data.sites.map(({ site }) => SITE[site]))].join(', ');
  }
}

/** As a form names them: one nostril or two is all one. */
const SITE = { throat: 'throat', 'nostril-1': 'nose', 'nostril-2': 'nose' } as const;
