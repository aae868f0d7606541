import type { ServerWriter } from './append-own.ts';
import { BACKUP_VERSION, type BackupHead, type BackupLine, type Extra } from './backup.ts';
import { enrol } from './enrol.ts';
import { readEntry } from './entry.ts';
import { targetsOf } from './erased-fact.ts';
import { erase } from './erasure.ts';
import type { Confirmed, Written } from './fact.ts';
import { CHAIN_START, type DeviceId, type FactId } from './ids.ts';
import type { Mark } from './store.ts';
import type { LedgerServer } from './sync-answer.ts';
import { MAX_FACTS } from './sync-message.ts';

export type RestoreRefusal =
  | 'not-empty'
  | 'not-a-backup'
  | 'newer-backup'
  | 'other-service'
  | 'without-private'
  | 'broken'
  | 'cut-off';

export type Restored =
  | { readonly ok: true; readonly facts: number; readonly erasedAgain: number }
  /** Nothing of the target may be used: what was read before the fault is in it. */
  | { readonly ok: false; readonly reason: RestoreRefusal; readonly detail: string };

export interface RestoreOptions {
  /** Erased ids from the memory outside all backups. */
  readonly remembered: readonly FactId[];
  /** A new id for the server: its old one may have written facts that the backup does not have. */
  readonly device: DeviceId;
  readonly writer: ServerWriter;
  /** Takes the devices and accounts. */
  readonly extra?: (extra: Extra) => Promise<void>;
}

/**
 * Fills an empty store from a backup's lines, checking every id and link. Remembered erasures are
 * applied before the first private part is written, and those that the ledger has forgotten are
 * stated in it anew, so that tablets hear of them too.
 */
export async function restore(
  server: LedgerServer,
  lines: AsyncIterable<BackupLine>,
  options: RestoreOptions,
): Promise<Restored> {
  const before = await server.store.head();
  if (before.position > 0 || before.pending > 0)
    return refuse('not-empty', `${before.position} facts`);
  const target = new Target(server, options);
  for await (const line of lines) {
    const refused = await target.take(line);
    if (refused) return refused;
  }
  return target.finish();
}

class Target {
  private head: BackupHead | undefined;
  private ended = false;
  private reached: Mark = { position: 0, chain: CHAIN_START };
  private page: Confirmed[] = [];
  /** To be remembered with the next page; what is remembered already comes before all facts. */
  private erased: FactId[];
  private readonly stated = new Set<FactId>();
  private readonly waiting: Written[] = [];
  private extras = 0;

  constructor(
    private readonly server: LedgerServer,
    private readonly options: RestoreOptions,
  ) {
    this.erased = [...options.remembered];
  }

  async take(line: BackupLine): Promise<Restored | undefined> {
    if ('head' in line) return this.begin(line.head);
    if (!this.head) return refuse('not-a-backup', 'no head in the first line');
    if ('fact' in line) return this.fact(line.fact);
    if ('erased' in line) this.erased.push(line.erased);
    else if ('waiting' in line) return this.wait(line.waiting);
    else if ('extra' in line) await this.extra(line.extra);
    else if ('end' in line)
      this.ended = line.end.facts === this.reached.position && line.end.extras === this.extras;
    return undefined;
  }

  private async begin(head: BackupHead): Promise<Restored | undefined> {
    const { service, format } = await this.server.store.head();
    if (head.backup !== BACKUP_VERSION || head.format > format)
      return refuse(
        'newer-backup',
        `version ${head.backup}, format ${head.format}; this program knows ${BACKUP_VERSION} and ${format}`,
      );
    if (head.service !== service) return refuse('other-service', head.service);
    if (!head.private) return refuse('without-private', 'made for reading, not for putting back');
    this.head = head;
    return undefined;
  }

  private async fact(claimed: Confirmed): Promise<Restored | undefined> {
    const read = readEntry(claimed, this.reached, this.server.hash);
    if (!read.ok) return refuse('broken', `${read.reason} at ${read.position}`);
    for (const id of targetsOf(read.body)) {
      this.stated.add(id);
      this.erased.push(id);
    }
    this.page.push(read.entry);
    this.reached = read.entry;
    if (this.page.length === MAX_FACTS) await this.flush();
    return undefined;
  }

  private async flush(): Promise<void> {
    const { store } = this.server;
    const { chain } = await store.head();
    await store.commit({ log: { expect: chain, append: this.page }, erase: this.erased });
    this.page = [];
    this.erased = [];
  }

  private wait(written: Written): Restored | undefined {
    if (this.server.hash(written.body) !== written.id) return refuse('broken', 'a waiting fact');
    this.waiting.push(written);
    return undefined;
  }

  private async extra(extra: Extra): Promise<void> {
    this.extras += 1;
    await this.options.extra?.(extra);
  }

  async finish(): Promise<Restored> {
    if (!this.head) return refuse('not-a-backup', 'empty');
    await this.flush();
    if (!this.ended || this.reached.chain !== this.head.chain)
      return refuse('cut-off', `${this.reached.position} of ${this.head.position} facts`);
    const { store } = this.server;
    if (this.waiting.length > 0) await store.commit({ wait: this.waiting });
    await enrol(store, this.options.device);
    const forgotten = this.options.remembered.filter((id) => !this.stated.has(id));
    await this.stateAgain(forgotten);
    return { ok: true, facts: this.reached.position, erasedAgain: forgotten.length };
  }

  private async stateAgain(targets: readonly FactId[]): Promise<void> {
    if (targets.length === 0) return;
    const done = await erase(this.server, { targets, reason: 'remembered' }, this.options.writer);
    if (!done.ok) throw new TypeError(`an erasure was refused: ${done.reason}`);
  }
}

const refuse = (reason: RestoreRefusal, detail: string): Restored => ({
  ok: false,
  reason,
  detail,
});
