import { canonicalText, type Json } from '../../src/ledger/canonical.ts';
import { receive } from '../../src/ledger/chain.ts';
import type { Confirmed, Written } from '../../src/ledger/fact.ts';
import { pureHash } from '../../src/ledger/hash.ts';
import {
  CHAIN_START,
  type DeviceId,
  type FactId,
  type Instant,
  NO_FACT,
  type ServiceId,
} from '../../src/ledger/ids.ts';
import { privateRecord } from '../../src/ledger/private.ts';
import type { Mark } from '../../src/ledger/store.ts';

export const service = 'fern-house' as ServiceId;
export const tablet = 'T0000001' as DeviceId;
export const other = 'T0000002' as DeviceId;
export const start: Mark = { position: 0, chain: CHAIN_START };

/** A chain of sound facts by one device, some with a private part. */
export const facts = (
  count: number,
  from: { readonly device?: DeviceId; readonly secret?: Json } = {},
): readonly Written[] => chain(count, from, () => ({}));

/** Facts of three kinds over twenty minutes, every seventh with a private part. */
export const mixed = (count: number): readonly Written[] =>
  chain(count, {}, (seq) => ({
    kind: ['swab.taken', 'swab.taken', 'person.named', 'code'][seq % 4],
    at: new Date(Date.parse('2026-11-25T08:00:00.000Z') + (seq % 1200) * 1000).toISOString(),
    ...(seq % 7 === 0 && { secret: { name: 'Ŵyn' } }),
  }));

interface Change {
  readonly kind?: string | undefined;
  readonly at?: string;
  readonly secret?: Json;
}

function chain(
  count: number,
  from: { readonly device?: DeviceId; readonly secret?: Json },
  changed: (seq: number) => Change,
): readonly Written[] {
  const made: Written[] = [];
  for (let seq = 1; seq <= count; seq++) {
    const { secret: value = from.secret, ...change } = changed(seq);
    const secret = value === undefined ? undefined : secretRecord(value, seq);
    const body = canonicalText({
      service,
      device: from.device ?? tablet,
      seq,
      prev: made.at(-1)?.id ?? NO_FACT,
      seen: CHAIN_START,
      at: '2026-11-25T08:00:00.000Z',
      off: 0,
      by: 'staff-1',
      kind: 'swab.taken',
      v: 1,
      data: { code: `C${seq}`, note: 'é€😀' },
      ...change,
      ...(secret !== undefined && { private: pureHash(secret) }),
    });
    const id = pureHash(body) as FactId;
    made.push(secret === undefined ? { id, body } : { id, body, private: secret });
  }
  return made;
}

function secretRecord(secret: Json, seq: number): string {
  const record = privateRecord(secret, new Uint8Array(16).fill(seq));
  if (!record.ok) throw new Error(record.detail);
  return record.text;
}

/** The facts with receipts, as a server gives them after a point of its log. */
export function confirmed(
  written: readonly Written[],
  after: Mark = start,
  via = tablet,
): readonly Confirmed[] {
  const arrived = '2026-11-25T08:05:00.000Z' as Instant;
  return receive(written, after, { arrived, via, skew: 12, hash: pureHash });
}

export const markOf = ({ position, chain }: Mark): Mark => ({ position, chain });
export const idsOf = (written: readonly { readonly id: FactId }[]): readonly FactId[] =>
  written.map(({ id }) => id);
