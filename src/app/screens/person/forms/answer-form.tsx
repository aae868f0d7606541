import type { JSX } from 'preact';
import type { DataOf } from '../../../../care/catalogue.ts';
import type { FactId, PersonId } from '../../../../care/ids.ts';
import type { OpenCaution } from '../../../../care/support/plan.ts';
import type { Day } from '../../../../care/time.ts';
import { answerCaution } from '../../../../procedures/record-consent.ts';
import { missing } from '../../../keeping/checks.ts';
import { OnlyFor } from '../../../keeping/only-for.tsx';
import { useForm } from '../../../keeping/use-form.ts';
import { Choice } from '../../../pieces/form/choice.tsx';
import { DateField } from '../../../pieces/form/date-field.tsx';
import { Field } from '../../../pieces/form/field.tsx';
import { EmptyPage } from '../../empty-page.tsx';
import { paths } from '../../paths.ts';
import type { PersonData } from '../person-data.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

type Answer = DataOf<'caution.answered'>['answer'];
const answers: readonly Answer[] = ['go-ahead', 'nose-only', 'do-not-swab', 'no-longer-applies'];

interface AnswerFields {
  readonly answer: Answer | '';
  readonly clinician: string;
  readonly words: string;
  readonly until: string;
}

interface AnswerFormProps {
  readonly person: PersonId;
  readonly caution: FactId;
}

/** What a clinician said to a caution: their words, not ours. */
export function AnswerForm({ person, caution: id }: AnswerFormProps): JSX.Element {
  const data = usePerson(person);
  const { title, gone } = data.words.support.answer;
  const caution = data.plan.cautions.find(({ raised }) => raised.id === id);
  if (caution === undefined) return <EmptyPage title={gone} />;
  return (
    <OnlyFor role="senior" title={title} back={paths.person(person)}>
      <OpenAnswer {...data} caution={caution} />
    </OnlyFor>
  );
}

function OpenAnswer({
  words,
  person,
  caution,
}: PersonData & { readonly caution: OpenCaution }): JSX.Element {
  const { support, record, keeping } = words;
  const say = support.answer;
  const back = paths.person(person.id);
  const form = useForm<AnswerFields>(
    { answer: '', clinician: '', words: '', until: '' },
    { title: `${say.title}: ${person.called}`, back },
  );
  const { bind } = form;
  return (
    <PersonForm
      person={person}
      title={say.title}
      lead={`${say.lead(words.cautions[caution.raised.data.caution])} ${say.asks}`}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <Choice
        {...bind('answer')}
        label={say.which}
        options={answers.map((value) => ({
          value,
          label: record.answers[value],
          hint: say.hints[value],
        }))}
      />
      <Field {...bind('clinician')} label={say.clinician} hint={say.clinicianHint} wide={30} />
      <Field {...bind('words')} label={say.words} lines={3} />
      <DateField {...bind('until')} label={say.until} hint={say.untilHint} optional />
    </PersonForm>
  );

  async function keep(): Promise<void> {
    const { answer, until, ...said } = form.value;
    const wrong = [...missing({ answer }, keeping.pickOne), ...missing(said, keeping.fillIn)];
    const end = until === '' ? {} : { until: until as Day };
    await form.submit(wrong, (home, doing) =>
      answer === ''
        ? { ok: true, value: [] }
        : answerCaution(
            home,
            { person: person.id, caution: caution.raised.id, answer, ...said, ...end },
            doing,
          ),
    );
  }
}
