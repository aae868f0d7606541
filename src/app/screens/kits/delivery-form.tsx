import type { JSX } from 'preact';
import type { Fact } from '../../../care/catalogue.ts';
import { policyOn } from '../../../care/policy/in-force.ts';
import type { Day } from '../../../care/time.ts';
import type { Box } from '../../../exchange/barcodes/read-box.ts';
import { receiveKits } from '../../../procedures/supplies.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Choice } from '../../pieces/form/choice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';
import { BoxFields } from './box-fields.tsx';
import { BoxScan } from './box-scan.tsx';

/** A box of kits came. It is kept at once; its kits are scanned on the next page. */
export function DeliveryForm(): JSX.Element {
  const desk = useDesk();
  const { supplies, keeping } = useAllWords();
  const say = supplies.form;
  const { kits } = policyOn(desk.home, todayOf(desk)).policy;
  const only = kits.length === 1 ? (kits[0]?.id ?? '') : '';
  const form = useForm(
    { kitKind: only, lot: '', expires: '', count: '' },
    { title: say.title, back: paths.kits },
  );
  return (
    <RecordForm
      title={say.title}
      lead={<p>{say.lead}</p>}
      back={paths.kits}
      keep={form.keep}
      onKeep={() => void keep()}
      label={say.next}
    >
      <BoxScan onBox={fill} />
      {kits.length > 1 && (
        <Choice
          {...form.bind('kitKind')}
          label={say.kind}
          options={kits.map(({ id, name }) => ({ value: id, label: name }))}
        />
      )}
      <BoxFields bind={form.bind} />
    </RecordForm>
  );

  /** What one scan of the box said; what it did not say stays as it was. */
  function fill({ kit, lot, expires }: Box): void {
    const said = { kitKind: kit?.id, lot, expires };
    for (const field of ['kitKind', 'lot', 'expires'] as const) {
      const value = said[field];
      if (value !== undefined) form.bind(field).onValue(value);
    }
  }

  async function keep(): Promise<void> {
    const { kitKind, lot, expires, count } = form.value;
    const wrong = [
      ...missing({ kitKind }, keeping.pickOne),
      ...missing({ lot, expires, count }, keeping.fillIn),
    ];
    const came = { kitKind, lot, expires: expires as Day, count: Number(count), codes: [] };
    await form.submit(wrong, (home, doing) => receiveKits(home, came, doing), unpackIn);
  }
}

/** Where the kits of the delivery that was just kept are scanned. */
function unpackIn(facts: readonly Fact[]): string {
  const delivered = facts.find((fact) => fact.kind === 'kits.delivered');
  if (delivered === undefined) return paths.kits;
  return paths.unpack(delivered.data.kitKind, delivered.data.delivery);
}
