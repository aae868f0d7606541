import type { JSX } from 'preact';
import { consentOn } from '../../../../care/consent/decision.ts';
import type { Authority } from '../../../../care/consent/facts.ts';
import { authorities } from '../../../../care/consent/facts.ts';
import type { PersonId } from '../../../../care/ids.ts';
import { policyOn } from '../../../../care/policy/in-force.ts';
import type { Day } from '../../../../care/time.ts';
import { recordConsent } from '../../../../procedures/record-consent.ts';
import { missing } from '../../../keeping/checks.ts';
import { OnlyFor } from '../../../keeping/only-for.tsx';
import { RecordForm } from '../../../keeping/record-form.tsx';
import { useForm } from '../../../keeping/use-form.ts';
import { Choice } from '../../../pieces/form/choice.tsx';
import { DateField } from '../../../pieces/form/date-field.tsx';
import { Field } from '../../../pieces/form/field.tsx';
import { Notice } from '../../../pieces/list/notice.tsx';
import { paths } from '../../paths.ts';
import type { PersonData } from '../person-data.ts';
import { usePerson } from '../person-data.ts';

interface DecisionFields {
  readonly test: string;
  readonly authority: Authority | '';
  readonly from: string;
  readonly until: string;
  readonly reason: string;
}

/** On whose word somebody may be asked. The program concludes nothing and fills nothing in. */
export function ConsentForm({ person }: { readonly person: PersonId }): JSX.Element {
  const data = usePerson(person);
  const { title } = data.words.support.consent;
  return (
    <OnlyFor role="senior" title={title} back={paths.person(person)}>
      <DecisionForm {...data} />
    </OnlyFor>
  );
}

function DecisionForm(data: PersonData): JSX.Element {
  const { desk, words, person, today } = data;
  const { support, keeping } = words;
  const say = support.consent;
  const { tests } = policyOn(desk.home, today).policy;
  const only = tests.length === 1 ? (tests[0]?.id ?? '') : '';
  const back = paths.person(person.id);
  const form = useForm<DecisionFields>(
    { test: only, authority: '', from: today, until: '', reason: '' },
    { title: `${say.title}: ${person.called}`, back },
  );
  const { bind } = form;
  return (
    <RecordForm
      title={say.title}
      lead={
        <>
          <p>
            {support.about(person.called)} {say.lead}
          </p>
          <Notice kind="note" title={say.caution}>
            {say.force}
          </Notice>
        </>
      }
      back={back}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      {tests.length === 1 ? (
        <p>
          <b>{words.record.decisionForLabel}</b> {tests[0]?.name}
        </p>
      ) : (
        <Choice
          {...bind('test')}
          label={say.test}
          options={tests.map(({ id, name }) => ({ value: id, label: name }))}
        />
      )}
      <InForce {...data} test={form.value.test} />
      <Choice
        {...bind('authority')}
        label={say.authority}
        options={authorities.map((value) => ({
          value,
          label: say.labels[value],
          hint: say.hints[value],
        }))}
      />
      <Field {...bind('reason')} label={say.reason} hint={say.reasonHint} lines={5} />
      <div class="field-row">
        <DateField {...bind('from')} label={say.from} />
        <DateField
          {...bind('until')}
          label={say.until}
          hint={say.untilHint}
          min={form.value.from}
        />
      </div>
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const { test, authority, reason, from, until } = form.value;
    const wrong = [
      ...missing({ test, authority }, keeping.pickOne),
      ...missing({ reason, from, until }, keeping.fillIn),
    ];
    if (authority === '') return form.submit(wrong, () => ({ ok: true, value: [] }));
    const days = { from: from as Day, until: until as Day };
    return form.submit(wrong, (home, doing) =>
      recordConsent(home, { person: person.id, test, authority, reason, ...days }, doing),
    );
  }
}

/** What stands now, and is replaced. */
function InForce({
  desk,
  words,
  person,
  today,
  test,
}: PersonData & { readonly test: string }): JSX.Element | null {
  const consent = consentOn(desk.home, person.id, test, today);
  if (consent.state === 'none' || consent.state === 'other-test') return null;
  const { authority, until } = consent.decision.data;
  return (
    <p class="soft">{words.support.consent.now(words.record.authorities[authority], until)}</p>
  );
}
