import type { JSX } from 'preact';
import { factsIn, standing } from '../../../care/home.ts';
import type { Day } from '../../../care/time.ts';
import { testWholeHome } from '../../../procedures/whereabouts.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { OnlyFor } from '../../keeping/only-for.tsx';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { DateField } from '../../pieces/form/date-field.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';

/** A senior says that everybody is to be tested, counting from a day, and who asked for it. */
export function WholeHomeForm(): JSX.Element {
  const { people } = useAllWords();
  return (
    <OnlyFor role="senior" title={people.wholeHome.title} back={paths.people}>
      <OpenForm />
    </OnlyFor>
  );
}

interface WholeHomeFields {
  readonly on: string;
  readonly askedBy: string;
}

function OpenForm(): JSX.Element {
  const desk = useDesk();
  const { people, keeping } = useAllWords();
  const say = people.wholeHome;
  const form = useForm<WholeHomeFields>(
    { on: todayOf(desk), askedBy: '' },
    { title: say.title, back: paths.people },
  );
  return (
    <RecordForm
      title={say.title}
      lead={
        <>
          <p>{say.lead}</p>
          <Notice kind="note" title={say.caution} />
          <AskedBefore />
        </>
      }
      back={paths.people}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <DateField {...form.bind('on')} label={say.on} />
      <Field {...form.bind('askedBy')} label={say.askedBy} hint={say.askedByHint} wide={30} />
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const { on, askedBy } = form.value;
    await form.submit(missing({ on, askedBy }, keeping.fillIn), (home, doing) =>
      testWholeHome(home, { on: on as Day, askedBy }, doing),
    );
  }
}

/** The latest three times, so that nobody asks for the same round twice. */
function AskedBefore(): JSX.Element | null {
  const desk = useDesk();
  const { people, keeping } = useAllWords();
  const facts = standing(factsIn(desk.home, 'policy', 'home-rounds'), 'home.tested-on');
  if (facts.length === 0) return null;
  return (
    <>
      <h2>{people.wholeHome.beforeTitle}</h2>
      <ul>
        {facts
          .slice(-3)
          .reverse()
          .map((fact) => (
            <li key={fact.id}>
              {people.wholeHome.before(fact.data.on, fact.private?.askedBy ?? keeping.erased)}
            </li>
          ))}
      </ul>
    </>
  );
}
