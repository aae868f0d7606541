import type { JSX } from 'preact';
import type { FactOf } from '../../../care/catalogue.ts';
import { factsIn, standing } from '../../../care/home.ts';
import { personOf } from '../../../care/people/person.ts';
import type { Day } from '../../../care/time.ts';
import { addDays } from '../../../care/time.ts';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { Part } from '../../pieces/page/part.tsx';
import type { PersonData } from './person-data.ts';

/** Older notes are in the history; these are the ones a test may still rest on. */
const SHOWN_DAYS = 30;

/** Symptoms and contacts of the last weeks. */
export function HealthPart(data: PersonData): JSX.Element {
  const { desk, words, person, today } = data;
  const { record } = words;
  const facts = factsIn(desk.home, 'person', person.id);
  const noted = [...standing(facts, 'symptoms.noticed'), ...standing(facts, 'contact.noted')]
    .filter((fact) => fact.data.on >= addDays(today, -SHOWN_DAYS))
    .sort((a, b) => byDay(b.data.on, a.data.on));
  return (
    <Part title={record.parts.health}>
      {noted.length === 0 && <p class="soft">{record.noHealth}</p>}
      <DetailList
        details={noted.map((fact) => ({
          key: fact.id,
          label: record.noticed(fact.data.on),
          value: sayNoted(fact, data),
        }))}
      />
    </Part>
  );
}

const byDay = (a: Day, b: Day): number => (a < b ? -1 : a > b ? 1 : 0);

type Noted = FactOf<'symptoms.noticed'> | FactOf<'contact.noted'>;

function sayNoted(fact: Noted, { desk, words }: PersonData): string {
  const { record, keeping } = words;
  const note = fact.private?.note ?? keeping.erased;
  const what =
    fact.kind === 'symptoms.noticed'
      ? record.signs(fact.data.signs.map((sign) => record.symptoms[sign]))
      : contactWith(fact);
  return [what, note].filter(Boolean).join('. ');

  function contactWith({ data }: FactOf<'contact.noted'>): string {
    if (data.source === undefined) return record.contact;
    return record.contactWith(personOf(desk.home, data.source).called || words.refusals.somebody);
  }
}
