import { useMemo, useState } from 'preact/hooks';
import { policyOn } from '../../../care/policy/in-force.ts';
import type { Day } from '../../../care/time.ts';
import type { ReadRows } from '../../../exchange/spreadsheets/row-problem.ts';
import { useDesk } from '../../desk/desk.ts';
import type { AnyColumn, ListKind, Told } from './list-kind.ts';
import type { Picked, Questions, ReadFile, Reading } from './reading.ts';
import { questionsIn, readFile } from './reading.ts';
import type { PickedFile } from './step-file.tsx';

interface ImportOf<Value> {
  readonly ok: true;
  readonly reading: Reading;
  readonly told: Told;
  readonly questions: Questions;
  readonly rows: ReadRows<Value, AnyColumn>;
  readonly tell: (change: Partial<Told>) => void;
  readonly pick: (change: Picked) => void;
}

/** A file being brought in: how it was read, what was said about it, and the rows that follow from both. */
export function useImport<Value extends { readonly name: string }>(
  kind: ListKind<Value>,
  file: PickedFile,
  today: Day,
): ImportOf<Value> | Extract<ReadFile, { ok: false }> {
  const { home } = useDesk();
  const { identifier } = policyOn(home, today).policy;
  const [picked, setPicked] = useState<Picked>({});
  const [said, setSaid] = useState<Partial<Told>>({});
  const reading = useMemo(() => readFile(file.bytes, kind, picked), [file, kind, picked]);
  return useMemo(() => {
    if (!reading.ok) return reading;
    const told = { ...toldIn(said, reading), identifier };
    const table = { rows: reading.table.rows, headings: reading.headings };
    return {
      ok: true,
      reading,
      told,
      questions: questionsIn(reading, kind, told.columns),
      rows: kind.read(table, told, today),
      tell: (change) => setSaid({ ...said, ...change }),
      // Read another way, the file has other columns: what was said of the old ones is void.
      pick: (change) => {
        setPicked({ ...picked, ...change });
        setSaid({});
      },
    };
  }, [reading, said, picked, kind, today, identifier]);
}

const toldIn = (said: Partial<Told>, reading: Reading): Told => ({
  columns: said.columns ?? reading.guessed,
  dateForm: said.dateForm,
  nameForm: said.nameForm,
  roles: said.roles ?? new Map(),
});
