import type { JSX } from 'preact';
import { recallLot } from '../../../procedures/supplies.ts';
import { missing } from '../../keeping/checks.ts';
import { OnlyFor } from '../../keeping/only-for.tsx';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Field } from '../../pieces/form/field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';
import type { OfLot } from './lot-screen.tsx';

/** The maker or the laboratory calls a lot back: from now on none of it can be opened. */
export function RecallLotForm({ kitKind, lot }: OfLot): JSX.Element {
  const { supplies } = useAllWords();
  const title = supplies.recallForm.title(lot);
  return (
    <OnlyFor role="senior" title={title} back={paths.lot(kitKind, lot)}>
      <OpenForm kitKind={kitKind} lot={lot} title={title} />
    </OnlyFor>
  );
}

function OpenForm({ kitKind, lot, title }: OfLot & { readonly title: string }): JSX.Element {
  const { supplies, keeping } = useAllWords();
  const say = supplies.recallForm;
  const back = paths.lot(kitKind, lot);
  const form = useForm({ reason: '' }, { title, back });
  return (
    <RecordForm
      title={title}
      lead={<p>{say.lead}</p>}
      back={back}
      keep={form.keep}
      onKeep={() => void keep()}
      label={say.press}
    >
      <Field {...form.bind('reason')} label={say.reason} lines={3} />
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const { reason } = form.value;
    await form.submit(missing({ reason }, keeping.fillIn), (home, doing) =>
      recallLot(home, { kitKind, lot, reason }, doing),
    );
  }
}
