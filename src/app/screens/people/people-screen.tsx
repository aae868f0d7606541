import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Person } from '../../../care/people/person.ts';
import { everybody } from '../../../care/people/person.ts';
import { unitOf } from '../../../care/people/unit.ts';
import { mayAs, useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Disclosure } from '../../pieces/page/disclosure.tsx';
import { EmptyState } from '../../pieces/page/empty-state.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { findPeople } from './find-people.ts';
import { PersonLine } from './person-line.tsx';

/** Everybody who lives here, with what needs a look; those who left are behind one press. */
export function PeopleScreen(): JSX.Element {
  const desk = useDesk();
  const { people: say } = useAllWords();
  const [typed, setTyped] = useState('');
  const all = everybody(desk.home);
  const found = findPeople(all, typed, (person) =>
    person.unit === undefined ? '' : unitOf(desk.home, person.unit).name,
  );
  const living = found.filter(({ whereabouts }) => whereabouts.where !== 'left');
  const left = found.filter(({ whereabouts }) => whereabouts.where === 'left');
  if (all.length === 0) {
    return (
      <>
        <PageHead title={say.title} />
        <EmptyState title={say.none} action={<AddButtons />}>
          {say.noneWhy}
        </EmptyState>
      </>
    );
  }
  const searching = typed.trim() !== '';
  return (
    <>
      <PageHead title={say.title}>
        <p>{countOf(all)}</p>
      </PageHead>
      <AddButtons />
      <div class="people-find">
        <Field
          id="find"
          type="search"
          label={say.search}
          value={typed}
          onValue={setTyped}
          wide={20}
        />
        <p role="status">
          {searching && (found.length === 0 ? say.notFound : say.found(found.length))}
        </p>
      </div>
      <List people={living} />
      {left.length > 0 && (
        <Disclosure title={say.left(left.length)}>
          <List people={left} />
        </Disclosure>
      )}
    </>
  );

  function countOf(everyone: readonly Person[]): string {
    const at = (where: string) =>
      everyone.filter(({ whereabouts }) => whereabouts.where === where).length;
    return say.count(at('here'), at('away'));
  }
}

function List({ people }: { readonly people: readonly Person[] }): JSX.Element | null {
  if (people.length === 0) return null;
  return (
    <div class="people-list">
      <ul>
        {people.map((person) => (
          <PersonLine key={person.id} person={person} />
        ))}
      </ul>
    </div>
  );
}

function AddButtons(): JSX.Element {
  const desk = useDesk();
  const { people: say } = useAllWords();
  return (
    <div class="button-row">
      <Button kind="main" icon="person" href={to(paths.newPerson)}>
        {say.add}
      </Button>
      <Button icon="note" href={to(paths.importPeople)}>
        {say.bringIn}
      </Button>
      {mayAs(desk, 'senior') && <Button href={to(paths.wholeHome)}>{say.wholeHome.title}</Button>}
    </div>
  );
}
