import { randomBytes } from 'node:crypto';
import { append, type Draft } from '../../src/ledger/append.ts';
import { enrol } from '../../src/ledger/enrol.ts';
import { pureHash } from '../../src/ledger/hash.ts';
import type { DeviceId, ServiceId, StaffId } from '../../src/ledger/ids.ts';
import { MemoryStore } from '../../src/ledger/stores/memory/store.ts';
import type { SyncAnswer, SyncReply } from '../../src/ledger/sync-message.ts';
import { syncAll } from '../../src/ledger/sync-round.ts';
import type { Enrolled } from '../../src/procedures/access/wire.ts';
import type { Caller } from './caller.ts';
import { SERVICE } from './home.ts';

/** A tablet's own ledger with the real sync procedures, over real HTTP. */
export class TabletCopy {
  readonly store: MemoryStore;
  last: SyncReply | undefined;

  constructor(
    private readonly caller: Caller,
    private readonly clock: { ms: number },
    service = SERVICE,
  ) {
    this.store = MemoryStore.open(service as ServiceId);
  }

  async begin({ device }: Enrolled): Promise<this> {
    await enrol(this.store, device as DeviceId);
    return this;
  }

  async write(by: string, draft: Draft): Promise<void> {
    const done = await append(this.store, [draft], {
      by: by as StaffId,
      deviceNow: this.clock.ms,
      salt: () => randomBytes(16),
      hash: pureHash,
      clockConfirmed: true,
    });
    if (!done.ok) throw new Error(done.reason);
  }

  sync(format = 1) {
    const wire = {
      now: () => this.clock.ms,
      send: async (request: unknown): Promise<SyncAnswer> => {
        const heard = await this.caller.call('POST', '/sync', { body: request });
        if (heard.status !== 200)
          return { ok: false, status: heard.status, ...heard.body } as unknown as SyncAnswer;
        this.last = heard.body as unknown as SyncReply;
        return { ok: true, reply: this.last };
      },
    };
    return syncAll(this.store, wire, { hash: pureHash, format });
  }
}

export const moved = (person: string): Draft => ({
  kind: 'person.went',
  v: 1,
  data: { person, on: '2026-11-25', to: 'moved' },
});
