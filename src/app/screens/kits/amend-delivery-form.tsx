import type { JSX } from 'preact';
import type { DeliveryId } from '../../../care/ids.ts';
import type { Delivery } from '../../../care/supplies/deliveries.ts';
import { deliveryOf } from '../../../care/supplies/deliveries.ts';
import type { Day } from '../../../care/time.ts';
import { amendDelivery } from '../../../procedures/unpack-kits.ts';
import { useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { paths } from '../paths.ts';
import type { Box } from './box-fields.tsx';
import { BoxFields } from './box-fields.tsx';

export interface OfDelivery {
  readonly kitKind: string;
  readonly delivery: DeliveryId;
}

/** What is printed on a box was read or typed wrong. */
export function AmendDeliveryForm({ kitKind, delivery: id }: OfDelivery): JSX.Element {
  const desk = useDesk();
  const { supplies } = useAllWords();
  const delivery = deliveryOf(desk.home, kitKind, id);
  return delivery === undefined ? (
    <EmptyPage title={supplies.unpack.unknown} />
  ) : (
    <OpenForm delivery={delivery} />
  );
}

function OpenForm({ delivery }: { readonly delivery: Delivery }): JSX.Element {
  const { supplies, keeping } = useAllWords();
  const say = supplies.form;
  const { kitKind, lot, expires, count } = delivery.delivered.data;
  const now: Box = { lot, expires, count: String(count) };
  const form = useForm(now, { title: supplies.amendBoxLot(lot), back: paths.kits });
  return (
    <RecordForm
      title={say.editTitle}
      lead={
        <>
          <p>{say.editLead}</p>
          <p>{supplies.scanned(delivery.codes.size, count)}</p>
        </>
      }
      back={paths.kits}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <BoxFields bind={form.bind} />
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const { value } = form;
    const box = { lot: value.lot, expires: value.expires as Day, count: Number(value.count) };
    await form.submit(missing({ ...value }, keeping.fillIn), (home) =>
      amendDelivery(home, { kitKind, delivery: delivery.id, ...box }),
    );
  }
}
