import type { JSX } from 'preact';
import type { Encoding } from '../../../exchange/spreadsheets/decode.ts';
import { encodings } from '../../../exchange/spreadsheets/decode.ts';
import type { Separator } from '../../../exchange/spreadsheets/separator.ts';
import { separators } from '../../../exchange/spreadsheets/separator.ts';
import { Select } from '../../pieces/form/select.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { Picked, Reading } from './reading.ts';

export interface HowReadProps {
  readonly reading: Reading;
  readonly onPicked: (picked: Picked) => void;
}

/** What was guessed of the file itself: its letters, its columns, its headings. Each can be changed. */
export function HowRead({ reading, onPicked }: HowReadProps): JSX.Element {
  const { importing } = useAllWords();
  const say = importing.map;
  return (
    <div class="field-row">
      <Select
        id="encoding"
        label={say.encoding}
        value={reading.encoding}
        onValue={(picked) => onPicked({ encoding: (picked || undefined) as Encoding | undefined })}
        options={encodings.map((value) => ({ value, label: importing.encodings[value] }))}
      />
      <Select
        id="separator"
        label={say.separator}
        value={reading.separator}
        onValue={(picked) =>
          onPicked({ separator: (picked || undefined) as Separator | undefined })
        }
        options={separators.map((value) => ({ value, label: importing.separators[value] }))}
      />
      <Select
        id="headings"
        label={say.headings}
        value={String(reading.headings.row)}
        onValue={(picked) => onPicked({ headingsRow: picked === '' ? undefined : Number(picked) })}
        options={reading.table.rows.slice(0, 10).map(({ row, cells }) => ({
          value: String(row),
          label: say.option(row, cells.filter(Boolean).slice(0, 3).join(', ').slice(0, 40)),
        }))}
      />
    </div>
  );
}
