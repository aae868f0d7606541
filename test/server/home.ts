import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import type { StaffId } from '../../src/care/ids.ts';
import type { Role } from '../../src/care/staff/facts.ts';
import type { Draft } from '../../src/ledger/append.ts';
import { appendOwn } from '../../src/ledger/append-own.ts';
import { enrol } from '../../src/ledger/enrol.ts';
import { pureHash } from '../../src/ledger/hash.ts';
import {
  deviceId,
  instantOf,
  type StaffId as LedgerStaffId,
  type ServiceId,
} from '../../src/ledger/ids.ts';
import { createLock } from '../../src/ledger/lock.ts';
import { openSqlite } from '../../src/ledger/stores/sqlite/open.ts';
import { openAccounts } from '../../src/server/accounts/accounts.ts';
import { setPin } from '../../src/server/accounts/pin-handlers.ts';
import { buildApp, type Setting } from '../../src/server/app.ts';
import type { Parts } from '../../src/server/parts.ts';
import { LedgerRights } from '../../src/server/rights/ledger-rights.ts';
import { Caller } from './caller.ts';

export const SERVICE = 'aldermere';
export const MANAGER = 'ottoline' as StaffId;
export const WORKER = 'jonahbee' as StaffId;
const PINS: Readonly<Record<StaffId, string>> = { [MANAGER]: '402917', [WORKER]: '735160' };
export const pinOf = (staff: StaffId): string => PINS[staff] ?? '';

export interface Home {
  readonly app: FastifyInstance;
  readonly parts: Parts;
  readonly folder: string;
  readonly url: string;
  readonly clock: { ms: number };
  readonly caller: () => Caller;
  /** Writes facts on the server's own chain. */
  readonly tell: (drafts: readonly Draft[]) => Promise<void>;
  readonly stop: () => Promise<void>;
}

/** A server in a folder of its own with a manager and a worker, both with PINs of their choice. */
export async function startHome(
  setting: Setting | ((parts: Parts) => Setting) = {},
  kept?: { readonly folder: string; readonly clock: { ms: number } },
): Promise<Home> {
  const folder = kept?.folder ?? mkdtempSync(join(tmpdir(), 'tallyround-'));
  const clock = kept?.clock ?? { ms: Date.parse('2026-11-25T09:00:00.000Z') };
  const parts = openParts(folder, clock);
  if (!kept) await settleIn(parts);
  const app = await buildApp(parts, typeof setting === 'function' ? setting(parts) : setting);
  const url = await app.listen({ host: '127.0.0.1', port: 0 });
  return {
    app,
    parts,
    folder,
    url,
    clock,
    caller: () => new Caller(url),
    tell: (drafts) => tell(parts, drafts),
    stop: async () => {
      await app.close();
      parts.accounts.close();
      await parts.ledger.store.close();
    },
  };
}

export const clear = (home: Home): void => rmSync(home.folder, { recursive: true });

function openParts(folder: string, clock: { ms: number }): Parts {
  const store = openSqlite(join(folder, 'ledger.sqlite'), {
    service: SERVICE as ServiceId,
    format: 1,
  });
  const accounts = openAccounts(join(folder, 'accounts.sqlite'), {
    random: randomBytes,
    firstSettings: () => ({
      service: SERVICE,
      title: 'Aldermere',
      zone: 'Europe/London',
      idleMinutes: 3,
      idleMinutesKitOpen: 15,
      leaseDays: 7,
      salt: 'a salt that only tests have',
    }),
  });
  const now = () => clock.ms;
  return {
    ledger: { store, hash: pureHash, lock: createLock() },
    accounts,
    rights: new LedgerRights({
      ...{ store, zone: 'Europe/London', now },
      inDoubt: (fact) => accounts.doubts.about(fact),
    }),
    now,
    random: randomBytes,
    // Argon2's least, so that a hundred sign-ins cost nothing.
    pinCost: { memory: 1024, time: 1 },
  };
}

async function settleIn(parts: Parts): Promise<void> {
  await enrol(parts.ledger.store, deviceId('server', randomBytes(6)));
  await tell(parts, [
    ...member(MANAGER, 'Ottoline Brack', 'manager'),
    ...member(WORKER, 'Jonah Bee', 'worker'),
  ]);
  for (const [staff, pin] of Object.entries(PINS)) {
    const set = await setPin(parts, { staff: staff as StaffId, pin, mustChange: false }, 'setup');
    if (!set.ok) throw new Error(set.turned.reason);
  }
}

export const member = (staff: StaffId, name: string, role: Role): Draft[] => [
  { kind: 'staff.described', v: 1, data: { staff, about: 'name' }, private: { value: name } },
  { kind: 'staff.role', v: 1, data: { staff, role } },
];

async function tell({ ledger, now }: Parts, drafts: readonly Draft[]): Promise<void> {
  const at = instantOf(now());
  if (at === undefined) throw new Error('no such time');
  const writer = { by: MANAGER as string as LedgerStaffId, now: at, salt: () => randomBytes(16) };
  const done = await appendOwn(ledger, drafts, writer);
  if (!done.ok) throw new Error(done.reason);
}
