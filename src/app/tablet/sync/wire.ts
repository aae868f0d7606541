import type { SyncAnswer, SyncRefusal, SyncReply } from '../../../ledger/sync-message.ts';
import { readReply } from '../../../ledger/sync-message.ts';
import type { Wire } from '../../../ledger/sync-round.ts';
import type { Turned } from '../../../procedures/access/wire.ts';
import type { Calls } from '../calls.ts';

/** The server turned the tablet away before its ledger was asked. */
export class TurnedAway extends Error {
  override readonly name = 'TurnedAway';
  constructor(
    readonly status: number,
    readonly turned: Turned,
  ) {
    super(turned.reason);
  }
}

/** Something answered, but not our server: a hotel's sign-in page, as a rule. */
export class NotOurServer extends Error {
  override readonly name = 'NotOurServer';
}

export interface HttpWire extends Wire {
  /** The newest reply of this attempt. */
  last(): SyncReply | undefined;
}

const refusals = new Set([400, 413, 426]);

/** The ledger's wire over HTTP. Throws what is no answer of the ledger's. */
export function httpWire(calls: Calls, syncKey: string, now: () => number): HttpWire {
  let last: SyncReply | undefined;
  return {
    now,
    last: () => last,
    async send(request): Promise<SyncAnswer> {
      const { status, json } = await calls.sync(request, syncKey);
      if (status === 200) {
        const read = readReply(json);
        if (!read.ok) throw new NotOurServer(read.detail);
        last = read.value;
        return { ok: true, reply: last };
      }
      if (!isTurned(json)) throw new NotOurServer(String(status));
      // The ledger's own refusals say more than why a call was turned away.
      if (refusals.has(status) && 'detail' in json)
        return { ...json, ok: false, status } as unknown as SyncRefusal;
      throw new TurnedAway(status, json);
    },
  };
}

const isTurned = (json: unknown): json is Turned =>
  typeof json === 'object' && json !== null && 'reason' in json && typeof json.reason === 'string';
