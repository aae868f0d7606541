import type { JSX } from 'preact';
import type { Row } from '../../../exchange/spreadsheets/read-table.ts';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { Reading } from './reading.ts';

/** As many as show whether letters and columns were read right. */
const SHOWN = 4;

/** The first rows of the file as they were read, for the eye. */
export function SampleRows({ reading }: { readonly reading: Reading }): JSX.Element {
  const { importing } = useAllWords();
  const say = importing.map;
  const { headings, table } = reading;
  const rows = table.rows.filter(({ row }) => row > headings.row).slice(0, SHOWN);
  return (
    <DataTable<Row>
      caption={say.sample}
      rows={rows}
      rowKey={({ row }) => String(row)}
      columns={[
        { key: 'row', label: importing.check.rowHead, cell: ({ row }) => row },
        ...headings.cells.map((heading, i) => ({
          key: String(i),
          label: heading || say.column(i + 1),
          cell: ({ cells }: Row) => cells[i] ?? '',
        })),
      ]}
    />
  );
}
