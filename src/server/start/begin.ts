import { existsSync } from 'node:fs';
import { settleDemo } from '../demo/settle.ts';
import type { Parts } from '../parts.ts';
import { addFirstManager, type FirstManager } from '../service/first-manager.ts';
import { openService } from '../service/open.ts';
import { places } from './data-folder.ts';
import { StartFault } from './faults.ts';
import type { Machine } from './machine.ts';
import type { Options } from './options.ts';

export interface Begun {
  readonly parts: Parts;
  /** Of a real service that begins now. */
  readonly manager?: FirstManager;
  readonly close: () => Promise<void>;
}

/** Opens what is there; an empty folder becomes the invented home, or a real one when asked for. */
export async function begin(options: Options, machine: Machine): Promise<Begun> {
  const demo = options.empty ? undefined : machine.demo;
  if (!demo && options.manager === undefined && !hasBegun(options))
    throw new StartFault('needs-manager', options.data);
  const { parts, isNew, close } = await openService(options.data, machine, () => ({
    title: options.title ?? demo?.title ?? 'Our home',
    zone: knownZone(options.zone ?? demo?.zone ?? machine.zone),
  }));
  try {
    if (!isNew) return { parts, close };
    if (demo) await settleDemo(parts, demo, places(options.data).demo);
    else if (options.manager !== undefined)
      return { parts, close, manager: await addFirstManager(parts, options.manager) };
    return { parts, close };
  } catch (error) {
    await close();
    throw error;
  }
}

const hasBegun = ({ data }: Options): boolean => existsSync(places(data).accounts);

function knownZone(zone: string): string {
  try {
    return new Intl.DateTimeFormat('en-GB', { timeZone: zone }).resolvedOptions().timeZone;
  } catch (cause) {
    throw new StartFault('unknown-zone', zone, { cause });
  }
}
