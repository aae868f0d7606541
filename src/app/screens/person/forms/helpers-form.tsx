import type { JSX } from 'preact';
import type { PersonId, StaffId } from '../../../../care/ids.ts';
import type { SwabberWish, WishTeller } from '../../../../care/people/facts.ts';
import { wishTellers } from '../../../../care/people/facts.ts';
import { helperWishes } from '../../../../care/people/helpers.ts';
import { everyMember, workingHere } from '../../../../care/staff/member.ts';
import { setHelpers } from '../../../../procedures/helpers.ts';
import { missing } from '../../../keeping/checks.ts';
import { useForm } from '../../../keeping/use-form.ts';
import { Checks, Choice } from '../../../pieces/form/choice.tsx';
import { Field } from '../../../pieces/form/field.tsx';
import { paths } from '../../paths.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

interface Helpers {
  readonly swabber: SwabberWish | 'anyone';
  readonly wanted: readonly StaffId[];
  readonly unwanted: readonly StaffId[];
  readonly told: WishTeller | '';
  readonly reason: string;
}

/** Whom somebody wants for a swab, whom not, and whether they ask for a woman or a man. */
export function HelpersForm({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { desk, words, person, today } = usePerson(id);
  const { form: say, tellers } = words.helpers;
  const back = paths.person(id);
  const wishes = helperWishes(desk.home, id);
  const now: Helpers = {
    swabber: wishes.swabber ?? 'anyone',
    ...{ wanted: wishes.wanted, unwanted: wishes.unwanted },
    ...{ told: wishes.told ?? '', reason: wishes.reason },
  };
  const form = useForm(now, { title: `${say.title}: ${person.called}`, back });
  const named = new Set([...wishes.wanted, ...wishes.unwanted]);
  const colleagues = everyMember(desk.home)
    .filter((member) => workingHere(member, today) || named.has(member.id))
    .map((member) => ({ value: member.id, label: member.name }));
  return (
    <PersonForm
      person={person}
      title={say.title}
      lead={say.lead}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <Choice
        {...form.bind('swabber')}
        label={say.swabber}
        options={[
          { value: 'anyone', label: say.anyone },
          { value: 'woman', label: say.aWoman },
          { value: 'man', label: say.aMan },
        ]}
        onValue={(value) => form.set({ swabber: value === '' ? 'anyone' : value })}
      />
      <Checks
        {...form.bind('unwanted')}
        label={say.unwanted}
        hint={say.unwantedHint}
        options={colleagues}
      />
      <Checks
        {...form.bind('wanted')}
        label={say.wanted}
        hint={say.wantedHint}
        options={colleagues}
      />
      <Choice
        {...form.bind('told')}
        label={say.told}
        options={wishTellers.map((value) => ({ value, label: tellers[value] }))}
      />
      <Field {...form.bind('reason')} label={say.reason} hint={say.reasonHint} optional />
    </PersonForm>
  );

  async function keep(): Promise<void> {
    const { swabber, wanted, unwanted, told, reason } = form.value;
    const both = wanted.some((staff) => unwanted.includes(staff));
    const wrong = [
      ...(both ? [{ field: 'wanted', text: say.both }] : []),
      ...missing({ told }, words.keeping.pickOne),
    ];
    await form.submit(wrong, (home, doing) =>
      told === ''
        ? { ok: true, value: [] }
        : setHelpers(
            home,
            {
              ...{ person: id, wanted, unwanted, told, reason },
              ...(swabber !== 'anyone' && { swabber }),
            },
            doing,
          ),
    );
  }
}
