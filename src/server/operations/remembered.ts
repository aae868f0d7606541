import { existsSync } from 'node:fs';
import type { FactId } from '../../ledger/ids.ts';
import type { World } from '../service/open.ts';
import { places } from '../start/data-folder.ts';

/** What a folder remembers as erased, even where its ledger is gone; empty where there is none. */
export function erasedIn(folder: string, world: Pick<World, 'openErasures'>): readonly FactId[] {
  const { erased } = places(folder);
  return existsSync(erased) ? world.openErasures(erased).ids() : [];
}
