import type { JSX } from 'preact';
import type { GoodRow } from '../../../exchange/spreadsheets/row-problem.ts';
import type { Column } from '../../pieces/list/data-table.tsx';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { AnyColumn, Likely, ListKind } from './list-kind.ts';

export interface GoodRowsProps<Value extends { readonly name: string }> {
  readonly kind: ListKind<Value>;
  readonly rows: readonly GoodRow<Value>[];
  /** Columns the file has. */
  readonly columns: readonly AnyColumn[];
  readonly likely: ReadonlyMap<number, Likely>;
  readonly kept: ReadonlySet<number>;
  readonly onToggle: (row: number) => void;
}

/** Every row that can be kept, to be looked at; whoever is most likely here already comes unticked. */
export function GoodRows<Value extends { readonly name: string }>(
  props: GoodRowsProps<Value>,
): JSX.Element | null {
  const { kind, rows, kept, likely, onToggle } = props;
  const words = useAllWords();
  const { check, likeness, columns } = words.importing;
  if (rows.length === 0) return null;
  const shown = props.columns.filter(
    (column) => column !== 'name' && column !== 'given' && column !== 'family',
  );
  const all: Column<GoodRow<Value>>[] = [
    {
      key: 'name',
      label: columns.name,
      cell: ({ row, value }) => (
        <label class="pick-row">
          <input
            type="checkbox"
            checked={kept.has(row)}
            onChange={() => onToggle(row)}
            aria-label={check.pick(value.name, row)}
          />
          {value.name}
        </label>
      ),
    },
    ...shown.map((column) => ({
      key: column,
      label: columns[column],
      cell: ({ value }: GoodRow<Value>) => kind.cell(value, column, words),
    })),
  ];
  if (likely.size > 0) {
    all.splice(1, 0, {
      key: 'likely',
      label: check.likelyHead,
      cell: ({ row }) => {
        const one = likely.get(row);
        return one && likeness[one.why](one.name);
      },
    });
  }
  return (
    <DataTable
      caption={check.goodTitle}
      rows={rows}
      rowKey={({ row }) => String(row)}
      columns={[...all, { key: 'row', label: check.rowHead, number: true, cell: ({ row }) => row }]}
    />
  );
}
