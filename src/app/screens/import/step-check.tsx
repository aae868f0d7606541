import type { JSX } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import type { ReadRows } from '../../../exchange/spreadsheets/row-problem.ts';
import { useDesk } from '../../desk/desk.ts';
import { useKeep } from '../../keeping/use-keep.ts';
import { Button } from '../../pieces/form/button.tsx';
import { ErrorSummary } from '../../pieces/form/error-summary.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { BadRows } from './bad-rows.tsx';
import { GoodRows } from './good-rows.tsx';
import type { AnyColumn, Likely, ListKind } from './list-kind.ts';
import type { Reading } from './reading.ts';

export interface StepCheckProps<Value extends { readonly name: string }> {
  readonly kind: ListKind<Value>;
  readonly reading: Reading;
  readonly columns: readonly AnyColumn[];
  readonly rows: ReadRows<Value, AnyColumn>;
  readonly onBack: () => void;
  readonly onKept: (count: number) => void;
}

/** The last step: every row told, good or bad, and one press that keeps all that are ticked, or none. */
export function StepCheck<Value extends { readonly name: string }>(
  props: StepCheckProps<Value>,
): JSX.Element {
  const { kind, rows, reading } = props;
  const desk = useDesk();
  const { importing } = useAllWords();
  const say = importing.check;
  const keep = useKeep();
  const likely = useMemo(() => {
    const found = new Map<number, Likely>();
    for (const { row, value } of rows.good) {
      const one = kind.likely(desk.home, value);
      if (one !== undefined) found.set(row, one);
    }
    return found;
  }, [rows, kind, desk.home]);
  const [kept, setKept] = useState<ReadonlySet<number>>(
    () => new Set(rows.good.map(({ row }) => row).filter((row) => !likely.has(row))),
  );
  return (
    <>
      <ErrorSummary problems={keep.problems} attempt={keep.attempt} />
      <Counts
        reading={reading}
        good={rows.good.length}
        bad={rows.bad.length}
        likely={likely.size}
      />
      <BadRows rows={rows.bad} />
      <GoodRows
        kind={kind}
        rows={rows.good}
        columns={props.columns}
        likely={likely}
        kept={kept}
        onToggle={(row) => setKept(toggled(kept, row))}
      />
      <div id="keep" class="button-row" tabIndex={-1}>
        <Button kind="main" onPress={() => void keepRows()}>
          {say.press(kept.size)}
        </Button>
        <Button kind="quiet" onPress={props.onBack}>
          {say.back}
        </Button>
      </div>
    </>
  );

  async function keepRows(): Promise<void> {
    const values = rows.good.filter(({ row }) => kept.has(row)).map(({ value }) => value);
    const none = values.length === 0 ? [{ field: 'keep', text: say.none }] : [];
    const facts = await keep.keep(none, (home, doing) => kind.keep(home, values, doing));
    if (facts !== undefined) props.onKept(values.length);
  }
}

function toggled(rows: ReadonlySet<number>, row: number): ReadonlySet<number> {
  const next = new Set(rows);
  if (!next.delete(row)) next.add(row);
  return next;
}

interface CountsProps {
  readonly reading: Reading;
  readonly good: number;
  readonly bad: number;
  readonly likely: number;
}

function Counts({ reading, good, bad, likely }: CountsProps): JSX.Element {
  const { importing } = useAllWords();
  const say = importing.check;
  const { brokenAt, beyond, empty } = reading.table;
  return (
    <>
      <ul class="import-counts">
        <li>{say.good(good)}</li>
        {bad > 0 && <li>{say.bad(bad)}</li>}
        {likely > 0 && <li>{say.likely(likely)}</li>}
        {empty > 0 && <li>{say.empty(empty)}</li>}
        {beyond > 0 && <li>{say.beyond(beyond)}</li>}
      </ul>
      {brokenAt !== undefined && (
        <Notice kind="look" title={say.broken(brokenAt)}>
          {say.brokenWhy}
        </Notice>
      )}
    </>
  );
}
