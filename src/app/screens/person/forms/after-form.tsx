import type { JSX } from 'preact';
import { turnsWith } from '../../../../care/custody/person-turns.ts';
import type { PersonId } from '../../../../care/ids.ts';
import type { Mood } from '../../../../care/practice/facts.ts';
import { moods } from '../../../../care/practice/facts.ts';
import { ownScale } from '../../../../care/support/proposal.ts';
import { noteAfter } from '../../../../procedures/note-after.ts';
import { missing } from '../../../keeping/checks.ts';
import { useForm } from '../../../keeping/use-form.ts';
import { Choice } from '../../../pieces/form/choice.tsx';
import { Field } from '../../../pieces/form/field.tsx';
import { paths } from '../../paths.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

/** How it went for the person: on the common scale, on their own, and what helped or upset them. */
export function AfterForm({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { desk, words, person, plan } = usePerson(id);
  const { keeping, turn } = words;
  const say = words.easyRead.after;
  const own = ownScale(plan.text('own-scale'));
  const back = paths.person(id);
  const form = useForm<{ mood: Mood | ''; own: string; helped: string; upset: string }>(
    { mood: '', own: '', helped: '', upset: '' },
    { title: `${say.title}: ${person.called}`, back },
  );
  const { mood, helped, upset } = form.value;
  const last = turnsWith(desk.home, id).at(-1)?.id;
  return (
    <PersonForm
      person={person}
      title={say.title}
      lead={say.lead}
      keep={form.keep}
      onKeep={() =>
        void form.submit(missing({ mood }, keeping.pickOne), () =>
          noteAfter({
            person: id,
            mood: mood === '' ? 'uneasy' : mood,
            ...(last !== undefined && { turn: last }),
            ...(form.value.own !== '' && { own: Number(form.value.own) }),
            helped,
            upset,
          }),
        )
      }
    >
      <Choice
        {...form.bind('mood')}
        label={say.mood}
        inline
        options={moods.map((value) => ({ value, label: turn.settled.moods[value] }))}
      />
      {own.length > 1 && (
        <Choice
          {...form.bind('own')}
          label={say.own}
          options={own.map((label, i) => ({ value: String(i), label }))}
        />
      )}
      <Field {...form.bind('helped')} label={say.helped} hint={say.helpedHint} lines={2} optional />
      <Field {...form.bind('upset')} label={say.upset} lines={2} optional />
    </PersonForm>
  );
}
