import type { ComponentChildren, JSX } from 'preact';
import { useId } from 'preact/hooks';
import { useWords } from '../../words/use-words.ts';
import { Icon } from '../icon/icon.tsx';
import './data-table.css';

export interface Column<Row> {
  readonly key: string;
  readonly label: string;
  readonly cell: (row: Row) => ComponentChildren;
  /** Numbers line up at the end. */
  readonly number?: boolean;
  readonly sortable?: boolean;
}

export interface Sort {
  readonly by: string;
  readonly up: boolean;
}

export interface DataTableProps<Row> {
  /** What the table states. */
  readonly caption: ComponentChildren;
  /** The first column heads its row. */
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  /** The rows come sorted by the caller; the table only asks. */
  readonly sort?: Sort | undefined;
  readonly onSort?: ((sort: Sort) => void) | undefined;
}

/** Rows and columns with headers. Too wide for its place, it scrolls by itself, keyboard included. */
export function DataTable<Row>(props: DataTableProps<Row>): JSX.Element {
  const { caption, columns, rows, rowKey } = props;
  const id = useId();
  return (
    <div class="data-table" role="region" aria-labelledby={id} tabIndex={0}>
      <table>
        <caption id={id}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <ColumnHead
                key={column.key}
                column={column}
                sort={props.sort}
                onSort={props.onSort}
              />
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={rowKey(row)}>
              {columns.map((column, i) => {
                const Cell = i === 0 ? 'th' : 'td';
                return (
                  <Cell
                    key={column.key}
                    scope={i === 0 ? 'row' : undefined}
                    data-number={column.number}
                  >
                    {column.cell(row)}
                  </Cell>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface ColumnHeadProps {
  readonly column: Pick<Column<never>, 'key' | 'label' | 'number' | 'sortable'>;
  readonly sort: Sort | undefined;
  readonly onSort: ((sort: Sort) => void) | undefined;
}

function ColumnHead({ column, sort, onSort }: ColumnHeadProps): JSX.Element {
  const { list } = useWords();
  const mine = sort?.by === column.key ? sort : undefined;
  if (column.sortable !== true || onSort === undefined) {
    return (
      <th scope="col" data-number={column.number}>
        {column.label}
      </th>
    );
  }
  const order = mine === undefined ? undefined : mine.up ? 'ascending' : 'descending';
  return (
    <th scope="col" data-number={column.number} aria-sort={order}>
      <button
        type="button"
        onClick={() => onSort({ by: column.key, up: mine === undefined ? true : !mine.up })}
        title={list.sort(column.label)}
      >
        {column.label}
        {mine !== undefined && <Icon name={mine.up ? 'up' : 'down'} />}
      </button>
    </th>
  );
}
