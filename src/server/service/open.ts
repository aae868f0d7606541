import { SERVER as signsForTheServer } from '../../care/ids.ts';
import { instantOf, type Zone } from '../../care/time.ts';
import { enrol } from '../../ledger/enrol.ts';
import { eraseForgotten } from '../../ledger/erasure.ts';
import type { Hash } from '../../ledger/hash.ts';
import {
  deviceId,
  type FactId,
  type Instant,
  type ServiceId,
  type StaffId,
} from '../../ledger/ids.ts';
import { createLock } from '../../ledger/lock.ts';
import { serverSeal } from '../../ledger/server-seal.ts';
import type { LedgerStore } from '../../ledger/store.ts';
import { type Accounts, openAccounts } from '../accounts/accounts.ts';
import { PIN_COST } from '../accounts/pins.ts';
import type { Random } from '../accounts/secrets.ts';
import type { Parts } from '../parts.ts';
import { LedgerRights } from '../rights/ledger-rights.ts';
import { places } from '../start/data-folder.ts';

/** What only a main.ts may choose. */
export interface World {
  readonly now: () => number;
  readonly random: Random;
  readonly hash: Hash;
  readonly openStore: (file: string, service: ServiceId) => LedgerStore;
  readonly openErasures: (file: string) => Erasures;
}

/** The memory of what was erased, which no backup of the ledger includes. */
export interface Erasures {
  remember(ids: readonly FactId[]): Promise<void>;
  ids(): readonly FactId[];
}

export interface FirstTime {
  readonly title: string;
  readonly zone: Zone;
}

export interface Service {
  readonly parts: Parts;
  /** Nothing has ever been written to its ledger. */
  readonly isNew: boolean;
  readonly close: () => Promise<void>;
}

/** Opens a service's ledger and accounts in a folder, making them the first time. */
export async function openService(
  folder: string,
  world: World,
  first: () => FirstTime,
): Promise<Service> {
  const at = places(folder);
  const accounts = openAccounts(at.accounts, {
    random: world.random,
    firstSettings: () => firstSettings(world.random, first()),
  });
  try {
    const store = world.openStore(at.ledger, accounts.settings.service as ServiceId);
    const head = await store.head();
    if (!head.device) await enrol(store, deviceId('server', world.random(6)));
    const erasures = world.openErasures(at.erased);
    const parts = partsOf(world, { store, accounts, erasures });
    await eraseAgain(parts, erasures);
    const close = async () => {
      accounts.close();
      await store.close();
    };
    return { parts, isNew: head.position === 0, close };
  } catch (error) {
    accounts.close();
    throw error;
  }
}

/** An old copy that was put back over the file must not bring anybody's data back with it. */
async function eraseAgain({ ledger, now, random }: Parts, erasures: Erasures): Promise<void> {
  const writer = {
    by: SERVER,
    now: instantOf(now()) as string as Instant,
    salt: () => random(16),
  };
  const done = await eraseForgotten(ledger, erasures.ids(), writer);
  if (!done.ok) throw new Error(`erasures were not stated again: ${done.reason}`);
}

/** Who writes what nobody has asked for, in the ledger's brand. */
export const SERVER = signsForTheServer as string as StaffId;

export interface OpenFiles {
  readonly store: LedgerStore;
  readonly accounts: Accounts;
  readonly erasures: Erasures;
}

/** What handlers are given, from files that are open. One for each process. */
export function partsOf(world: World, { store, accounts, erasures }: OpenFiles): Parts {
  const { now, random, hash } = world;
  const { zone } = accounts.settings;
  const seal = serverSeal(accounts.sealKey);
  const rememberErased: Erasures['remember'] = (ids) => erasures.remember(ids);
  return {
    ledger: { store, hash, lock: createLock(), rememberErased, seal },
    accounts,
    rights: new LedgerRights({
      ...{ store, zone, now },
      inDoubt: (fact) => accounts.doubts.about(fact),
    }),
    now,
    random,
    pinCost: PIN_COST,
  };
}

const firstSettings = (random: Random, { title, zone }: FirstTime) => ({
  service: Buffer.from(random(12)).toString('base64url'),
  title,
  zone,
  idleMinutes: 3,
  idleMinutesKitOpen: 15,
  leaseDays: 7,
  salt: Buffer.from(random(24)).toString('base64url'),
});
