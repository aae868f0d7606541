import type { JSX } from 'preact';
import type { FactOf } from '../../../care/catalogue.ts';
import type { Entry } from '../../../care/record/history.ts';
import { historyOf } from '../../../care/record/history.ts';
import type { Day } from '../../../care/time.ts';
import { testWholeHome } from '../../../procedures/whereabouts.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { missing } from '../../keeping/checks.ts';
import { OnlyFor } from '../../keeping/only-for.tsx';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DateField } from '../../pieces/form/date-field.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';

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

/** The latest three times, so that nobody asks for the same round twice; each can be taken back. */
function AskedBefore(): JSX.Element | null {
  const { home } = useDesk();
  const { people } = useAllWords();
  const asked = historyOf(home, 'policy', 'home-rounds').filter(isAsked);
  if (asked.length === 0) return null;
  return (
    <>
      <h2>{people.wholeHome.beforeTitle}</h2>
      <ul>
        {asked.slice(0, 3).map((entry) => (
          <Asked key={entry.fact.id} {...entry} />
        ))}
      </ul>
    </>
  );
}

interface AskedEntry extends Entry {
  readonly fact: FactOf<'home.tested-on'>;
}
const isAsked = (entry: Entry): entry is AskedEntry => entry.fact.kind === 'home.tested-on';

function Asked({ fact, replacedBy }: AskedEntry): JSX.Element {
  const desk = useDesk();
  const { people, keeping, refusals } = useAllWords();
  const say = people.wholeHome;
  const off = replacedBy.find((each) => each.kind === 'home.called-off');
  return (
    <li>
      {say.before(fact.data.on, fact.private?.askedBy ?? keeping.erased)}{' '}
      {off === undefined ? (
        <Button
          kind="quiet"
          href={to(paths.callOffWholeHome(fact.id))}
          label={say.callOffThis(fact.data.on)}
        >
          {say.callOff}
        </Button>
      ) : (
        say.calledOff(
          namesIn(desk.home, refusals.somebody).staff(off.by),
          off.private?.reason ?? keeping.erased,
        )
      )}
    </li>
  );
}
