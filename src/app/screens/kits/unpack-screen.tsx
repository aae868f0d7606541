import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { nearPairs } from '../../../care/custody/near-codes.ts';
import type { Code } from '../../../care/kind.ts';
import type { Delivery } from '../../../care/supplies/deliveries.ts';
import { deliveryOf } from '../../../care/supplies/deliveries.ts';
import { takeCodeOut, unpackKit } from '../../../procedures/unpack-kits.ts';
import { useDesk } from '../../desk/desk.ts';
import { useAct } from '../../desk/use-act.ts';
import { Button } from '../../pieces/form/button.tsx';
import { TallyCount } from '../../pieces/frame/tally-count.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { ScanField } from '../../pieces/scan/scan-field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import type { OfDelivery } from './amend-delivery-form.tsx';
import { NearPairs } from './box-scan.tsx';
import { ScannedCodes } from './scanned-codes.tsx';

/** The kits of a delivery, scanned one after another. Each scan is kept at once: nothing waits for Done. */
export function UnpackScreen({ kitKind, delivery: id }: OfDelivery): JSX.Element {
  const desk = useDesk();
  const { supplies } = useAllWords();
  const delivery = deliveryOf(desk.home, kitKind, id);
  return delivery === undefined ? (
    <EmptyPage title={supplies.unpack.unknown} />
  ) : (
    <OpenBox delivery={delivery} />
  );
}

function OpenBox({ delivery }: { readonly delivery: Delivery }): JSX.Element {
  const desk = useDesk();
  const { supplies } = useAllWords();
  const say = supplies.unpack;
  const { act, problem } = useAct();
  const { kitKind, lot, count } = delivery.delivered.data;
  const codes = [...delivery.codes.keys()];
  const [last, setLast] = useState<Code | undefined>(undefined);
  const shown = last !== undefined && delivery.codes.has(last) ? last : undefined;
  const of = { kitKind, delivery: delivery.id };
  return (
    <>
      <PageHead title={say.title(lot)}>
        <p>{say.lead}</p>
      </PageHead>
      <div class="unpack">
        <div class="unpack-count">
          <p class="unpack-number">{say.done(codes.length, count)}</p>
          <TallyCount done={codes.length} of={count} text={say.picture(codes.length, count)} />
        </div>
        <ScanField onCode={(code) => void scan(code)} problem={problem}>
          {shown !== undefined && problem === undefined && (
            <p>
              {say.last} <CodeText code={shown} />{' '}
              <span class="unseen">{say.done(codes.length, count)}</span>
            </p>
          )}
        </ScanField>
        {shown !== undefined && (
          <Button kind="quiet" onPress={() => void takeOut(shown)}>
            {say.takeOut}
          </Button>
        )}
      </div>
      <NearPairs pairs={nearPairs(desk.home, codes)} />
      <Difference delivery={delivery} />
      <ScannedCodes codes={codes} onOut={(code) => void takeOut(code)} />
      <div class="button-row">
        <Button kind="main" href={to(paths.kits)}>
          {say.finish}
        </Button>
        <Button kind="quiet" href={to(paths.amendDelivery(kitKind, delivery.id))}>
          {supplies.amendBox}
        </Button>
      </div>
    </>
  );

  async function scan(code: string): Promise<void> {
    const facts = await act((home, doing) => unpackKit(home, { ...of, code }, doing));
    if (facts !== undefined) setLast(code.trim() as Code);
  }

  async function takeOut(code: Code): Promise<void> {
    await act((home) => takeCodeOut(home, { ...of, code }));
  }
}

/** More or fewer than the box says: told while somebody still stands at the box. */
function Difference({ delivery }: { readonly delivery: Delivery }): JSX.Element | null {
  const { supplies } = useAllWords();
  const say = supplies.unpack;
  const off = delivery.codes.size - delivery.delivered.data.count;
  if (delivery.codes.size === 0) return null;
  if (off === 0) return <Notice kind="note" title={say.all} />;
  return off > 0 ? (
    <Notice kind="look" title={say.more(off)}>
      {say.moreWhy}
    </Notice>
  ) : (
    <Notice kind="note" title={say.fewer(-off)}>
      {say.fewerWhy}
    </Notice>
  );
}
