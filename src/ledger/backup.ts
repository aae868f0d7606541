import type { Json } from './canonical.ts';
import type { Confirmed, Written } from './fact.ts';
import type { ChainValue, FactId, Instant, ServiceId } from './ids.ts';
import type { LedgerStore } from './store.ts';
import { MAX_FACTS } from './sync-message.ts';

export const BACKUP_VERSION = 1;

/** First line of a backup. */
export interface BackupHead {
  readonly backup: number;
  readonly service: ServiceId;
  readonly format: number;
  readonly position: number;
  readonly chain: ChainValue;
  readonly made: Instant;
  /** False: private parts were left out, so no service can be put back from it. */
  readonly private: boolean;
}

/** Something of the server's that is not a fact: a device, an account. */
export interface Extra {
  readonly name: string;
  readonly value: Json;
}

/** Last line: without it the file was cut off. */
export interface BackupEnd {
  readonly facts: number;
  readonly extras: number;
}

/**
 * The lines of a backup, each one JSON text: head, erased ids, facts with their receipts, facts that
 * wait, extras, end. The log only ever grows, so what stood up to the head when it began is read in
 * pages without holding anyone up. SQLite and PostgreSQL write and read the same lines.
 */
export async function* backupLines(
  store: LedgerStore,
  options: {
    readonly made: Instant;
    readonly private: boolean;
    readonly extras?: AsyncIterable<Extra> | Iterable<Extra>;
  },
): AsyncGenerator<string> {
  const { service, format, position, chain } = await store.head();
  const head: BackupHead = {
    backup: BACKUP_VERSION,
    service,
    format,
    position,
    chain,
    made: options.made,
    private: options.private,
  };
  yield JSON.stringify({ head });
  for (const erased of await store.erased()) yield JSON.stringify({ erased });
  const shown = options.private ? whole : withoutPrivate;
  for (let after = 0; after < position; after += MAX_FACTS)
    for (const fact of await store.confirmed(after, Math.min(MAX_FACTS, position - after)))
      yield JSON.stringify({ fact: shown(fact) });
  for (const { id, body, private: record } of await store.pending())
    yield JSON.stringify({
      waiting: shown(record === undefined ? { id, body } : { id, body, private: record }),
    });
  let extras = 0;
  for await (const extra of options.extras ?? []) {
    extras += 1;
    yield JSON.stringify({ extra });
  }
  yield JSON.stringify({ end: { facts: position, extras } satisfies BackupEnd });
}

const whole = <T extends Written>(fact: T): T => fact;

function withoutPrivate<T extends Written>(fact: T): T {
  const shown = { ...fact };
  delete (shown as { private?: string }).private;
  return shown;
}

/** A line of a backup, read. */
export type BackupLine =
  | { readonly head: BackupHead }
  | { readonly erased: FactId }
  | { readonly fact: Confirmed }
  | { readonly waiting: Written }
  | { readonly extra: Extra }
  | { readonly end: BackupEnd };
