import type { JSX } from 'preact';
import { factsIn } from '../../../../care/home.ts';
import type { FactId, PersonId } from '../../../../care/ids.ts';
import { strikeOut } from '../../../../procedures/strike-out.ts';
import { missing } from '../../../keeping/checks.ts';
import { OnlyFor } from '../../../keeping/only-for.tsx';
import { useForm } from '../../../keeping/use-form.ts';
import { Field } from '../../../pieces/form/field.tsx';
import { sayEntry } from '../../history/say-entry.ts';
import { paths } from '../../paths.ts';
import type { PersonData } from '../person-data.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

interface StrikeFormProps {
  readonly person: PersonId;
  readonly entry: FactId;
}

/** An entry that should never have been made: struck out, with a reason, and still to be read. */
export function StrikeForm({ person, entry }: StrikeFormProps): JSX.Element {
  const data = usePerson(person);
  return (
    <OnlyFor role="senior" title={data.words.history.strikeTitle} back={paths.person(person)}>
      <OpenStrike {...data} entry={entry} />
    </OnlyFor>
  );
}

function OpenStrike({
  desk,
  words,
  person,
  entry,
}: PersonData & { readonly entry: FactId }): JSX.Element {
  const { history, keeping } = words;
  const back = paths.person(person.id);
  const form = useForm({ reason: '' }, { title: history.strikeTitle, back });
  const fact = factsIn(desk.home, 'person', person.id).find(({ id }) => id === entry);
  const said = fact && sayEntry(fact, { desk, words, of: 'person' });
  return (
    <PersonForm
      person={person}
      title={history.strikeTitle}
      lead={history.strikeLead}
      more={
        said !== undefined && (
          <p>
            <b>{said.what}</b> {said.value}
          </p>
        )
      }
      keep={form.keep}
      onKeep={() => void keep()}
      label={history.strikePress}
    >
      <Field {...form.bind('reason')} label={history.strikeWhy} lines={3} />
    </PersonForm>
  );

  async function keep(): Promise<void> {
    const { reason } = form.value;
    await form.submit(missing({ reason }, keeping.fillIn), (home, doing) =>
      strikeOut(home, { person: person.id, entry, reason }, doing),
    );
  }
}
