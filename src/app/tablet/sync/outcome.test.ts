import { describe, expect, it } from 'vitest';
import { StorageError } from '../../../ledger/store.ts';
import type { Round } from '../../../ledger/sync-round.ts';
import { outcomeOf, outcomeOfThrown } from './outcome.ts';
import { NotOurServer, TurnedAway } from './wire.ts';

const applied = (update: boolean) =>
  ({ ok: true, applied: { ok: true, update }, setAside: [] }) as unknown as Round;

describe('what an attempt to sync means', () => {
  it('is all well when facts went through', () => {
    expect(outcomeOf(applied(false))).toEqual({ online: true, met: true, problem: undefined });
  });

  it('is an old program here or there, which waits and loses nothing', () => {
    expect(outcomeOf(applied(true)).problem).toEqual({ kind: 'program-old' });
    const newer = { ok: false, status: 426, reason: 'newer-tablet', detail: '' } as const;
    expect(outcomeOf(newer)).toEqual({ online: true, met: false, problem: { kind: 'server-old' } });
  });

  it('is an unsound server when its chain does not hold, and by which fact', () => {
    const broken = { ok: false, reason: 'broken-link', position: 7 } as const;
    expect(outcomeOf(broken).problem).toEqual({ kind: 'server-unsound', position: 7 });
  });

  it('is no contact when nothing of ours answered', () => {
    for (const error of [new TypeError('fetch failed'), new NotOurServer('302')])
      expect(outcomeOfThrown(error)).toEqual({ online: false, met: false, problem: 'same' });
  });

  it('is a retired or unknown tablet, or a server that cannot write', () => {
    const kind = (status: number, reason: 'device-retired' | 'device-unknown' | 'fault') =>
      outcomeOfThrown(new TurnedAway(status, { reason })).problem;
    expect(kind(403, 'device-retired')).toEqual({ kind: 'retired' });
    expect(kind(401, 'device-unknown')).toEqual({ kind: 'device-unknown' });
    expect(kind(500, 'fault')).toEqual({ kind: 'server-broken' });
  });

  it('never hides that the tablet’s own disk failed', () => {
    const full = new StorageError('full', 'commit');
    expect(() => outcomeOfThrown(full)).toThrow(full);
  });
});
