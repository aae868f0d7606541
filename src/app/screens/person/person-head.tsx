import type { JSX } from 'preact';
import { namesakes } from '../../../care/people/person.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { PersonBadge } from '../../pieces/list/person-badge.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import type { PersonData } from './person-data.ts';
import { nameOf } from './person-data.ts';

/** Face, name, where they live, and a word on anybody who could be taken for them. */
export function PersonHead(data: PersonData): JSX.Element {
  const { desk, words, person } = data;
  const { record, people } = words;
  const alike = namesakes(desk.home, person);
  const { whereabouts } = person;
  return (
    <>
      <div class="person-head">
        <PersonBadge name={person.name} photo={person.photo} size="large" />
        <PageHead title={nameOf(data)}>
          <p>
            {[
              person.called && record.called(person.called),
              person.room && `${people.room(person.room)}.`,
            ]
              .filter(Boolean)
              .join(' ')}
          </p>
        </PageHead>
      </div>
      <div class="button-row">
        <Button href={to(paths.symptoms(person.id))}>{record.symptomsPress}</Button>
        <Button href={to(paths.contact(person.id))}>{record.contactPress}</Button>
        <Button href={to(paths.whereabouts(person.id))}>{record.wherePress}</Button>
      </div>
      {whereabouts.where === 'left' && (
        <Notice
          kind="look"
          title={
            whereabouts.to === 'died'
              ? record.hasDied(person.called)
              : record.hasMoved(person.called)
          }
        />
      )}
      {alike.length > 0 && whereabouts.where !== 'left' && (
        <Notice
          kind="look"
          title={record.namesake(alike.map(({ name }) => name))}
          action={<NamesakeLinks {...data} alike={alike} />}
        >
          {record.namesakeWhy}
        </Notice>
      )}
    </>
  );
}

function NamesakeLinks({
  alike,
}: PersonData & { readonly alike: readonly PersonData['person'][] }): JSX.Element {
  return (
    <div class="namesake-links">
      {alike.map((other) => (
        <Button key={other.id} href={to(paths.person(other.id))}>
          <span class="namesake-link">
            <PersonBadge name={other.name} photo={other.photo} />
            {other.called}
          </span>
        </Button>
      ))}
    </div>
  );
}
