import type { JSX } from 'preact';
import type { PersonId } from '../../../../care/ids.ts';
import { setWays } from '../../../../procedures/record-consent.ts';
import { useForm } from '../../../keeping/use-form.ts';
import { Choice } from '../../../pieces/form/choice.tsx';
import { Notice } from '../../../pieces/list/notice.tsx';
import { paths } from '../../paths.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

interface Ways {
  readonly sites: 'throat-and-nose' | 'nose-only' | '';
  readonly identity: 'birthday' | 'face' | '';
  readonly self: 'self' | 'staff' | '';
}

/** Which sites, how it is made sure who this is, and whose hand holds the swab. */
export function WaysForm({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { words, person, plan } = usePerson(id);
  const { support, record } = words;
  const say = support.ways;
  const back = paths.person(id);
  const now: Ways = {
    sites: plan.sites,
    identity: plan.identity,
    self: plan.selfSwab ? 'self' : 'staff',
  };
  const form = useForm(now, { title: `${say.title}: ${person.called}`, back });
  const { sites, identity, self } = form.value;
  return (
    <PersonForm person={person} title={say.title} keep={form.keep} onKeep={() => void keep()}>
      <Choice
        {...form.bind('sites')}
        label={say.sites}
        options={[
          { value: 'throat-and-nose', label: record.sites['throat-and-nose'] },
          { value: 'nose-only', label: record.sites['nose-only'] },
        ]}
      />
      <Choice
        {...form.bind('identity')}
        label={say.identity}
        options={(['birthday', 'face'] as const).map((value) => ({
          value,
          label: record.identity[value],
          hint: say.identityHints[value],
        }))}
      />
      {identity === 'face' && person.photo === undefined && (
        <Notice kind="look" title={say.needsPhoto} />
      )}
      {identity === 'birthday' && person.born === undefined && (
        <Notice kind="look" title={say.needsBirth} />
      )}
      <Choice
        {...form.bind('self')}
        label={say.self}
        options={[
          { value: 'staff', label: record.noSelfSwab },
          { value: 'self', label: record.selfSwab },
        ]}
      />
    </PersonForm>
  );

  async function keep(): Promise<void> {
    await form.submit([], (home) => {
      const same = sites === now.sites && identity === now.identity && self === now.self;
      if (same || sites === '' || identity === '') return { ok: true, value: [] };
      return setWays(home, { person: id, sites, identity, selfSwab: self === 'self' });
    });
  }
}
