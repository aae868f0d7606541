import { canonicalText, type JsonObject } from '../../src/ledger/canonical.ts';
import { receive } from '../../src/ledger/chain.ts';
import type { Confirmed, Written } from '../../src/ledger/fact.ts';
import type { Hash } from '../../src/ledger/hash.ts';
import {
  CHAIN_START,
  type ChainValue,
  type DeviceId,
  type FactId,
  type Instant,
  instantOf,
  NO_FACT,
  type ServiceId,
} from '../../src/ledger/ids.ts';

export const service = 'fern-house' as ServiceId;
const START = Date.parse('2021-11-25T06:00:00.000Z');
const steps = [
  'consented',
  'labelled',
  'kit-opened',
  'swabbed',
  'sealed',
  'packed',
  'handed-over',
  'registered',
  'resulted',
  'acted-on',
];
const people = 24;
const devices = ['T0000001', 'T0000002', 'T0000003', 'T0000004'] as DeviceId[];

/**
 * Invented facts of the shape and size of a home's: ten steps a test, 24 people, four tablets, one
 * fact in 50 with a private part. Five years are about 250,000 of them.
 */
export function invented(count: number, hash: Hash): readonly Confirmed[] {
  const heads = devices.map(() => ({ seq: 0, last: NO_FACT }));
  const log: Confirmed[] = [];
  let head = { position: 0, chain: CHAIN_START };
  let page: Written[] = [];
  for (let n = 0; n < count; n++) {
    const at = instantOf(START + Math.floor((n / 250_000) * 5 * 365 * 86_400_000));
    if (!at) throw new RangeError('no such time');
    const test = Math.floor(n / steps.length);
    const device = test % devices.length;
    const own = heads[device];
    if (!own) throw new RangeError('no such device');
    const written = fact(n, {
      device: devices[device] as DeviceId,
      own,
      seen: head.chain,
      at,
      hash,
    });
    own.seq += 1;
    own.last = written.id;
    page.push(written);
    if (page.length < 10 && n < count - 1) continue;
    const entries = receive(page, head, {
      arrived: at,
      via: devices[device] as DeviceId,
      skew: 40,
      hash,
    });
    log.push(...entries);
    head = entries.at(-1) ?? head;
    page = [];
  }
  return log;
}

interface Basis {
  readonly device: DeviceId;
  readonly own: { readonly seq: number; readonly last: FactId };
  readonly seen: ChainValue;
  readonly at: Instant;
  readonly hash: Hash;
}

function fact(n: number, { device, own, seen, at, hash }: Basis): Written {
  const step = n % steps.length;
  const test = Math.floor(n / steps.length);
  const data: JsonObject = {
    test: `test-${test}`,
    person: `person-${test % people}`,
    round: `round-${Math.floor(test / people)}`,
    code: `01H${String(test).padStart(9, '0')}`,
    how: 'scanned',
    site: step % 2 === 0 ? 'throat-and-nostril' : 'both-nostrils',
    outcome: 'taken',
  };
  const secret =
    n % 50 === 0
      ? canonicalText({ salt: 'AAAAAAAAAAAAAAAAAAAAAA', value: { note: `said so herself ${n}` } })
      : undefined;
  const body = canonicalText({
    service,
    device,
    seq: own.seq + 1,
    prev: own.last,
    seen,
    at,
    off: 120,
    by: `staff-${test % 7}`,
    with: [`staff-${(test + 1) % 7}`],
    kind: `test.${steps[step] ?? ''}`,
    v: 1,
    data,
    ...(secret !== undefined && { private: hash(secret) }),
  });
  const id = hash(body) as FactId;
  return secret === undefined ? { id, body } : { id, body, private: secret };
}
