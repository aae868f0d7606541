import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { MAX_BYTES } from '../../../exchange/spreadsheets/decode.ts';
import { FileField } from '../../pieces/form/file-field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { AnyColumn, ListKind } from './list-kind.ts';
import type { ReadFile } from './reading.ts';
import { readFile } from './reading.ts';

/** A file from the device, in memory: it goes nowhere else. */
export interface PickedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface StepFileProps {
  readonly kind: Pick<ListKind<never>, 'headings'> & { readonly columns: readonly AnyColumn[] };
  readonly onFile: (file: PickedFile) => void;
}

type Bad = Extract<ReadFile, { ok: false }>['reason'] | 'unreadable';

/** The first step: a file that can be read at all. */
export function StepFile({ kind, onFile }: StepFileProps): JSX.Element {
  const { importing } = useAllWords();
  const say = importing.file;
  const [bad, setBad] = useState<Bad | undefined>(undefined);
  const [reading, setReading] = useState(false);
  return (
    <>
      <FileField
        id="file"
        label={say.label}
        hint={say.hint}
        accept=".csv,.tsv,.txt,text/csv,text/plain"
        problem={bad && say.bad[bad]}
        onFile={(file) => void take(file)}
      />
      <p role="status">{reading && say.reading}</p>
    </>
  );

  async function take(file: File): Promise<void> {
    setBad(file.size > MAX_BYTES ? 'too-large' : undefined);
    if (file.size > MAX_BYTES) return;
    setReading(true);
    const buffer = await file.arrayBuffer().catch(() => undefined);
    setReading(false);
    if (buffer === undefined) {
      setBad('unreadable');
      return;
    }
    const bytes = new Uint8Array(buffer);
    const read = readFile(bytes, kind, {});
    if (read.ok) onFile({ name: file.name, bytes });
    else setBad(read.reason);
  }
}
