import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { policyOn } from '../../../care/policy/in-force.ts';
import { ownCode } from '../../../exchange/barcodes/own-codes.ts';
import type { LabelStock } from '../../../exchange/documents/label-stocks.ts';
import { labelStocks, labelsOn } from '../../../exchange/documents/label-stocks.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { CodeBars } from '../../pieces/scan/code-bars.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import './label-sheet.css';

/** Labels of each kit: tube, bag and spare. */
const COPIES = 3;
const MOST = 200;

const draw = (prefix: string, count: number): readonly string[] =>
  Array.from({ length: count }, () => ownCode(prefix, crypto.getRandomValues(new Uint8Array(8))));

/**
 * Labels for a kind of kit that the service labels itself: from any start position, printed by the
 * tablet with no signal. Nothing is kept: a kit is known once it is unpacked and scanned like any other.
 */
export function LabelSheetPage({ kitKind }: { readonly kitKind: string }): JSX.Element {
  const desk = useDesk();
  const { labels } = useAllWords();
  const kit = policyOn(desk.home, todayOf(desk)).policy.kits.find(({ id }) => id === kitKind);
  const [stockId, setStockId] = useState('a4-24');
  const [kits, setKits] = useState('8');
  const [startAt, setStartAt] = useState('1');
  const [codes, setCodes] = useState<readonly string[]>([]);
  const stock = labelStocks.find(({ id }) => id === stockId);
  const prefix = kit?.ownPrefix;
  if (prefix === undefined || stock === undefined) return <EmptyPage title={labels.notOwn} />;
  const [count, start] = [Number(kits), Number(startAt)];
  const countWrong = !Number.isInteger(count) || count < 1 || count > MOST;
  const startWrong = !Number.isInteger(start) || start < 1 || start > labelsOn(stock);
  return (
    <div class="label-page">
      <div class="no-print">
        <PageHead title={labels.title}>
          <p>{labels.note}</p>
        </PageHead>
        <Select
          id="label-stock"
          label={labels.stock}
          value={stockId}
          onValue={setStockId}
          options={labelStocks.map((each) => ({
            value: each.id,
            label: labels.stockOf(labelsOn(each), each.label[0], each.label[1]),
          }))}
        />
        <Field
          id="label-kits"
          label={labels.kits}
          value={kits}
          onValue={setKits}
          problem={countWrong ? labels.kitsWrong(MOST) : undefined}
        />
        <Field
          id="label-start"
          label={labels.startAt}
          value={startAt}
          onValue={setStartAt}
          problem={startWrong ? labels.startWrong(labelsOn(stock)) : undefined}
        />
        <div class="button-row">
          <Button
            kind="main"
            onPress={() => {
              if (!countWrong && !startWrong) setCodes(draw(prefix, count));
            }}
          >
            {labels.make}
          </Button>
          {codes.length > 0 && (
            <Button icon="print" onPress={() => window.print()}>
              {labels.print}
            </Button>
          )}
        </div>
      </div>
      <Sheets codes={codes} stock={stock} startAt={startWrong ? 1 : start} />
    </div>
  );
}

/** The sheets as they come out of the printer. */
export function Sheets({
  codes,
  stock,
  startAt,
}: {
  readonly codes: readonly string[];
  readonly stock: LabelStock;
  readonly startAt: number;
}): JSX.Element {
  const each = labelsOn(stock);
  const blank = Array.from({ length: startAt - 1 }, () => '');
  const all = [...blank, ...codes.flatMap((code) => Array.from({ length: COPIES }, () => code))];
  const sheets = Array.from(
    { length: codes.length === 0 ? 0 : Math.ceil(all.length / each) },
    (_, i) => all.slice(i * each, (i + 1) * each),
  );
  const mm = (value: number) => `${String(value)}mm`;
  return (
    <>
      {sheets.map((labels, page) => (
        <section
          key={page}
          class="label-sheet"
          style={{ inlineSize: mm(stock.paper[0]), blockSize: mm(stock.paper[1]) }}
        >
          {labels.map((code, i) =>
            code === '' ? null : (
              <div
                key={i}
                class="label"
                style={{
                  insetInlineStart: mm(stock.origin[0] + (i % stock.columns) * stock.pitch[0]),
                  insetBlockStart: mm(
                    stock.origin[1] + Math.floor(i / stock.columns) * stock.pitch[1],
                  ),
                  inlineSize: mm(stock.label[0]),
                  blockSize: mm(stock.label[1]),
                }}
              >
                <CodeBars code={code} />
              </div>
            ),
          )}
        </section>
      ))}
    </>
  );
}
