import type { JSX } from 'preact';
import { factsIn, ofKind } from '../../../care/home.ts';
import { kitKindOf, policyOn } from '../../../care/policy/in-force.ts';
import { historyOf } from '../../../care/record/history.ts';
import { deliveriesOf } from '../../../care/supplies/deliveries.ts';
import type { Lot } from '../../../care/supplies/stock.ts';
import { stockOf } from '../../../care/supplies/stock.ts';
import { mayAs, todayOf, useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Disclosure } from '../../pieces/page/disclosure.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { HistoryList } from '../history/history-list.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { lotState } from './lot-state.ts';
import { ofLot } from './of-lot.ts';

export interface OfLot {
  readonly kitKind: string;
  readonly lot: string;
}

/** One lot: how many, until when, whether it was called back, and how we know. */
export function LotScreen({ kitKind, lot: name }: OfLot): JSX.Element {
  const desk = useDesk();
  const { supplies } = useAllWords();
  const say = supplies.lotPage;
  const lot = stockOf(desk.home, kitKind).lots.find((each) => each.lot === name);
  if (lot === undefined) return <EmptyPage title={say.unknown} />;
  return (
    <>
      <PageHead title={say.title(name)} />
      <LotNotice lot={lot} />
      <div class="button-row">
        <Button href={to(paths.countLot(kitKind, name))}>{say.count}</Button>
        {!lot.recalled && mayAs(desk, 'senior') && (
          <Button href={to(paths.recallLot(kitKind, name))}>{say.recall}</Button>
        )}
      </div>
      <LotDetails lot={lot} />
      <LotHistory kitKind={kitKind} lot={name} />
    </>
  );
}

function LotNotice({ lot }: { readonly lot: Lot }): JSX.Element | null {
  const desk = useDesk();
  const { supplies } = useAllWords();
  const say = supplies.lotPage;
  const today = todayOf(desk);
  const { policy } = policyOn(desk.home, today);
  if (lot.recalled) {
    return (
      <Notice kind="look" title={say.recalled}>
        {say.recalledAsk}
      </Notice>
    );
  }
  switch (lotState(lot, today, policy.kitsExpireSoonDays.value)) {
    case 'ended':
      return <Notice kind="look" title={say.ended(lot.expires)} />;
    case 'soon':
      return <Notice kind="note" title={say.soon(lot.expires)} />;
    default:
      return null;
  }
}

function LotDetails({ lot }: { readonly lot: Lot }): JSX.Element {
  const desk = useDesk();
  const { supplies, dates } = useAllWords();
  const say = supplies.lotPage;
  const { policy } = policyOn(desk.home, todayOf(desk));
  const { lotOfCode } = stockOf(desk.home, lot.kitKind);
  const known = [...lotOfCode.values()].filter((each) => each.lot === lot.lot).length;
  const opened = ofKind(factsIn(desk.home, 'lot', lot.kitKind), 'kit.opened').filter(
    ({ data }) => (data.lot ?? lotOfCode.get(data.code)?.lot) === lot.lot,
  ).length;
  return (
    <DetailList
      details={[
        { key: 'left', label: supplies.left, value: lot.left },
        { key: 'ends', label: supplies.ends, value: dates.date(lot.expires) },
        { key: 'known', label: say.known, value: known },
        { key: 'opened', label: say.opened, value: opened },
        {
          key: 'kind',
          label: say.kind,
          value: kitKindOf(policy, lot.kitKind)?.name ?? lot.kitKind,
        },
      ]}
    />
  );
}

function LotHistory({ kitKind, lot }: OfLot): JSX.Element {
  const desk = useDesk();
  const { supplies, record } = useAllWords();
  const belongs = ofLot(lot, {
    deliveries: deliveriesOf(desk.home, kitKind),
    lotOfCode: stockOf(desk.home, kitKind).lotOfCode,
  });
  const entries = historyOf(desk.home, 'lot', kitKind).filter(({ fact }) => belongs(fact));
  return (
    <Part title={supplies.lotPage.history}>
      <Disclosure title={record.historyCount(entries.length)}>
        <HistoryList entries={entries} of="lot" />
      </Disclosure>
    </Part>
  );
}
