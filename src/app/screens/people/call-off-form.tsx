import type { JSX } from 'preact';
import type { FactId } from '../../../care/ids.ts';
import { wholeHomeAsked } from '../../../care/outbreaks/whole-home.ts';
import { callOffWholeHome } from '../../../procedures/whereabouts.ts';
import { useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { OnlyFor } from '../../keeping/only-for.tsx';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Field } from '../../pieces/form/field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';

/** A senior takes back that the whole home is tested, and says why. */
export function CallOffForm({ asked }: { readonly asked: FactId }): JSX.Element {
  const { people } = useAllWords();
  return (
    <OnlyFor role="senior" title={people.wholeHome.callOffTitle} back={paths.wholeHome}>
      <OpenForm asked={asked} />
    </OnlyFor>
  );
}

function OpenForm({ asked }: { readonly asked: FactId }): JSX.Element {
  const { home } = useDesk();
  const { people, keeping } = useAllWords();
  const say = people.wholeHome;
  const form = useForm({ reason: '' }, { title: say.callOffTitle, back: paths.wholeHome });
  const fact = wholeHomeAsked(home).find(({ id }) => id === asked);
  return (
    <RecordForm
      title={say.callOffTitle}
      lead={
        fact === undefined ? (
          <p>{say.gone}</p>
        ) : (
          <>
            <p>
              <b>{say.before(fact.data.on, fact.private?.askedBy ?? keeping.erased)}</b>
            </p>
            <p>
              {say.callOffLead} {say.callOffOthers}
            </p>
          </>
        )
      }
      back={paths.wholeHome}
      keep={form.keep}
      onKeep={() => void keep()}
      label={say.callOff}
    >
      <Field {...form.bind('reason')} label={say.callOffWhy} hint={say.callOffWhyHint} lines={3} />
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const { reason } = form.value;
    await form.submit(missing({ reason }, keeping.fillIn), (home, doing) =>
      callOffWholeHome(home, { asked, reason }, doing),
    );
  }
}
