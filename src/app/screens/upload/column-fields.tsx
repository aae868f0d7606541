import type { JSX } from 'preact';
import type { UploadPart } from '../../../care/results/facts.ts';
import { uploadParts } from '../../../care/results/facts.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { Column } from './columns.ts';
import { columnMoved, columnWith, columnWithout } from './columns.ts';

interface ColumnFieldsProps {
  readonly columns: readonly Column[];
  readonly at: number;
  readonly onColumns: (columns: Column[]) => void;
  readonly problemOf: (field: string) => string | undefined;
}

/** One column of the file: what it holds, its title, its place. */
export function ColumnFields({
  columns,
  at,
  onColumns,
  problemOf,
}: ColumnFieldsProps): JSX.Element {
  const { uploading: say } = useAllWords();
  const column = columns[at] ?? { holds: 'code', title: '' };
  const change = (more: Partial<Column>): void => onColumns(columnWith(columns, at, more));
  return (
    <li>
      <h2>{say.column(at + 1)}</h2>
      <div class="field-row">
        <Select
          id={`holds-${at}`}
          label={say.what}
          value={column.holds}
          onValue={(value) => value !== '' && change({ holds: value as UploadPart })}
          options={uploadParts.map((part) => ({ value: part, label: say.holds[part] }))}
          {...(['first-names', 'last-name'].includes(column.holds) && { hint: say.lastNameHint })}
        />
        <Field
          id={`title-${at}`}
          label={say.columnTitle}
          wide={18}
          value={column.title}
          onValue={(title) => change({ title })}
          problem={problemOf(`title-${at}`)}
        />
        {column.holds === 'fixed' && (
          <Field
            id={`text-${at}`}
            label={say.text}
            wide={18}
            value={column.text ?? ''}
            onValue={(text) => change({ text })}
            problem={problemOf(`text-${at}`)}
          />
        )}
      </div>
      <div class="button-row">
        {at > 0 && (
          <Button
            icon="up"
            onPress={() => onColumns(columnMoved(columns, at, -1))}
            label={say.up(at + 1)}
          >
            <span class="unseen">{say.up(at + 1)}</span>
          </Button>
        )}
        {at < columns.length - 1 && (
          <Button
            icon="down"
            onPress={() => onColumns(columnMoved(columns, at, 1))}
            label={say.down(at + 1)}
          >
            <span class="unseen">{say.down(at + 1)}</span>
          </Button>
        )}
        {columns.length > 1 && (
          <Button
            kind="quiet"
            onPress={() => onColumns(columnWithout(columns, at))}
            label={say.remove(at + 1)}
          >
            {say.removeShort}
          </Button>
        )}
      </div>
    </li>
  );
}
