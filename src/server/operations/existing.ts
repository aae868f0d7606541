import { existsSync } from 'node:fs';
import type { ServiceId } from '../../ledger/ids.ts';
import { openAccounts } from '../accounts/accounts.ts';
import type { Parts } from '../parts.ts';
import { partsOf, type World } from '../service/open.ts';
import { places } from '../start/data-folder.ts';
import { StartFault } from '../start/faults.ts';

/** Works with a service that exists, beside its server or without; nothing is made or begun. */
export async function withService<T>(
  folder: string,
  world: World,
  work: (parts: Parts) => Promise<T>,
): Promise<T> {
  const at = places(folder);
  if (!existsSync(at.accounts) || !existsSync(at.ledger))
    throw new StartFault('no-service', folder);
  const accounts = openAccounts(at.accounts, {
    random: world.random,
    firstSettings: () => {
      throw new StartFault('no-service', folder);
    },
  });
  const store = world.openStore(at.ledger, accounts.settings.service as ServiceId);
  const erasures = world.openErasures(at.erased);
  try {
    return await work(partsOf(world, { store, accounts, erasures }));
  } finally {
    accounts.close();
    await store.close();
  }
}
