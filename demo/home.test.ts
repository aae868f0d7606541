import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { describe, expect, it } from 'vitest';
import windlestraw from '../policies/windlestraw-house-1.json' with { type: 'json' };
import { workNow } from '../src/care/now/now.ts';
import { readPolicy } from '../src/care/policy/policy.ts';
import { findings } from '../src/care/quality/findings.ts';
import type { Day, Instant } from '../src/care/time.ts';
import { momentOf } from '../src/care/time.ts';
import { openFact } from '../src/ledger/fact.ts';
import type { DeviceId, ServiceId } from '../src/ledger/ids.ts';
import { CHAIN_START, NO_FACT } from '../src/ledger/ids.ts';
import { demoHome } from './home.ts';

const hash = (text: string) => Buffer.from(sha256(utf8ToBytes(text))).toString('base64url');

function demo(now: Instant) {
  const read = readPolicy(windlestraw);
  if (!read.ok) throw new Error(`${read.where}: ${read.what}`);
  const device = { id: 'S0000001' as DeviceId, seq: 0, last: NO_FACT };
  const head = {
    service: 'windlestraw' as ServiceId,
    format: 1,
    position: 0,
    chain: CHAIN_START,
    device,
    pending: 0,
    rewinds: 0,
  };
  return demoHome(
    { zone: 'Europe/London', policies: [read.policy] },
    { head, device, hash },
    { seed: 7, now, policyDigest: hash('x') },
  );
}

describe('the demo home', () => {
  const now = momentOf('2026-11-25' as Day, '07:00', 'Europe/London');
  const made = demo(now);

  it('opens on a morning with twelve people due, one held, one result late, kits that end soon', () => {
    const work = workNow(made.home, now);
    const count = (kind: string) => work.filter((each) => each.work === kind).length;
    expect({
      due: count('due'),
      held: count('held'),
      late: count('chase'),
      kits: count('kits-expire'),
      practice: count('practice'),
    }).toEqual({ due: 12, held: 1, late: 1, kits: 1, practice: 2 });
    expect(work).toHaveLength(17);
  });

  it('has nothing that clashes and nothing unreadable', () => {
    expect(findings(made.home)).toEqual([]);
    expect(made.home.known.size).toBe(made.facts.length);
  });

  it('was written in the order of time, as by a tablet whose clock is right', () => {
    const times = made.facts.map((fact) => openFact(fact).at as number | string);
    expect(times.filter((at, i) => i > 0 && at < (times[i - 1] ?? at))).toEqual([]);
  });

  it('is the same home for the same seed', () => {
    expect(demo(now).facts.map((fact) => fact.id)).toEqual(made.facts.map((fact) => fact.id));
  });

  it('can be made on any day of the year, a clock change included', () => {
    for (const day of ['2026-03-29', '2026-04-05', '2026-10-25', '2026-11-02', '2028-02-29']) {
      const at = momentOf(day as Day, '07:00', 'Europe/London');
      expect(
        workNow(demo(at).home, at).filter((each) => each.work === 'due'),
        day,
      ).toHaveLength(12);
    }
  });
});
