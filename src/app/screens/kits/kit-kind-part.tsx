import type { JSX } from 'preact';
import type { KitKind, Policy } from '../../../care/policy/policy.ts';
import type { Delivery } from '../../../care/supplies/deliveries.ts';
import { deliveriesOf } from '../../../care/supplies/deliveries.ts';
import type { Lot } from '../../../care/supplies/stock.ts';
import { stockOf } from '../../../care/supplies/stock.ts';
import type { Day } from '../../../care/time.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Chips } from '../../pieces/list/chips.tsx';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Disclosure } from '../../pieces/page/disclosure.tsx';
import { EmptyState } from '../../pieces/page/empty-state.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';
import { lotState, needsLook } from './lot-state.ts';

export interface KitKindPartProps {
  readonly kit: KitKind;
  readonly policy: Policy;
  readonly today: Day;
}

/** One kind of kit: its lots, soonest end first, and the deliveries they came in. */
export function KitKindPart({ kit, policy, today }: KitKindPartProps): JSX.Element {
  const desk = useDesk();
  const { supplies: say } = useAllWords();
  const { lots, openedOfUnknownLot } = stockOf(desk.home, kit.id);
  const soon = policy.kitsExpireSoonDays.value;
  const onShelf = lots.filter(({ left }) => left > 0);
  const usedUp = lots.filter(({ left }) => left === 0);
  return (
    <Part title={kit.name}>
      {openedOfUnknownLot > 0 && (
        <Notice kind="look" title={say.unknownLot(openedOfUnknownLot)}>
          {say.unknownLotWhy}
        </Notice>
      )}
      {lots.length === 0 && <EmptyState title={say.none}>{say.noneWhy}</EmptyState>}
      {onShelf.length > 0 && <LotTable {...{ lots: onShelf, today, soon }} caption={say.lots} />}
      {usedUp.length > 0 && (
        <Disclosure title={say.usedUp(usedUp.length)}>
          <LotTable {...{ lots: usedUp, today, soon }} caption={say.state.usedUp} />
        </Disclosure>
      )}
      <Deliveries kitKind={kit.id} />
    </Part>
  );
}

interface LotTableProps {
  readonly lots: readonly Lot[];
  readonly today: Day;
  readonly soon: number;
  readonly caption: string;
}

function LotTable({ lots, today, soon, caption }: LotTableProps): JSX.Element {
  const { supplies: say, dates } = useAllWords();
  return (
    <DataTable<Lot>
      caption={caption}
      rows={lots}
      rowKey={({ lot }) => lot}
      columns={[
        {
          key: 'lot',
          label: say.lot,
          cell: ({ kitKind, lot }) => (
            <a class="row-link" href={to(paths.lot(kitKind, lot))}>
              {lot}
            </a>
          ),
        },
        { key: 'left', label: say.left, number: true, cell: ({ left }) => left },
        { key: 'ends', label: say.ends, cell: ({ expires }) => dates.shortDate(expires) },
        {
          key: 'state',
          label: say.stateHead,
          cell: (lot) => {
            const state = lotState(lot, today, soon);
            return (
              <Chips chips={[{ key: state, text: say.state[state], look: needsLook(state) }]} />
            );
          },
        },
      ]}
    />
  );
}

/** How many of the latest deliveries are shown. */
const SHOWN = 5;

function Deliveries({ kitKind }: { readonly kitKind: string }): JSX.Element | null {
  const desk = useDesk();
  const { supplies: say } = useAllWords();
  const deliveries = deliveriesOf(desk.home, kitKind).slice(0, SHOWN);
  if (deliveries.length === 0) return null;
  return (
    <>
      <h3>{say.deliveries}</h3>
      <ul class="deliveries">
        {deliveries.map((delivery) => (
          <DeliveryLine key={delivery.id} delivery={delivery} />
        ))}
      </ul>
    </>
  );
}

function DeliveryLine({ delivery }: { readonly delivery: Delivery }): JSX.Element {
  const { supplies: say } = useAllWords();
  const { kitKind, lot, count, on } = delivery.delivered.data;
  const differs = delivery.codes.size !== count;
  return (
    <li>
      <p>
        {say.delivery(on, lot, count)} {say.scanned(delivery.codes.size, count)}
      </p>
      <div class="button-row">
        {differs && (
          <Button href={to(paths.unpack(kitKind, delivery.id))} label={say.goOnScanningLot(lot)}>
            {say.goOnScanning}
          </Button>
        )}
        <Button
          kind="quiet"
          href={to(paths.amendDelivery(kitKind, delivery.id))}
          label={say.amendBoxLot(lot)}
        >
          {say.amendBox}
        </Button>
      </div>
    </li>
  );
}
