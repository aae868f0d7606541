import type { JSX } from 'preact';
import { stockOf } from '../../../care/supplies/stock.ts';
import { countKits } from '../../../procedures/supplies.ts';
import { useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Field } from '../../pieces/form/field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';
import type { OfLot } from './lot-screen.tsx';

/** The shelf was counted: from now on the count is what was seen. */
export function CountLotForm({ kitKind, lot }: OfLot): JSX.Element {
  const desk = useDesk();
  const { supplies, keeping } = useAllWords();
  const say = supplies.countForm;
  const left = stockOf(desk.home, kitKind).lots.find((each) => each.lot === lot)?.left ?? 0;
  const back = paths.lot(kitKind, lot);
  const title = say.title(lot);
  const form = useForm({ count: '' }, { title, back });
  return (
    <RecordForm
      title={title}
      lead={<p>{say.lead(left)}</p>}
      back={back}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <Field {...form.bind('count')} label={say.count} inputMode="numeric" wide={6} />
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const { count } = form.value;
    await form.submit(missing({ count }, keeping.fillIn), (home, doing) =>
      countKits(home, { kitKind, lot, count: Number(count) }, doing),
    );
  }
}
