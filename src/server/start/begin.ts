import { existsSync } from 'node:fs';
import { DEMO_ZONE, demoToday, settleDemo } from '../demo/settle.ts';
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
  const zone = options.zone ?? (options.empty ? machine.zone : DEMO_ZONE);
  checkZone(zone);
  if (options.empty && options.manager === undefined && !hasBegun(options))
    throw new StartFault('needs-manager', options.data);
  const demo = options.empty ? undefined : demoToday(machine.now());
  const title = options.title ?? demo?.service.title ?? 'Our home';
  const { parts, isNew, close } = await openService(options.data, machine, { title, zone });
  try {
    if (isNew && demo) await settleDemo(parts, demo, places(options.data).demo);
    const manager =
      isNew && options.manager !== undefined
        ? await addFirstManager(parts, options.manager)
        : undefined;
    return { parts, close, ...(manager && { manager }) };
  } catch (error) {
    await close();
    throw error;
  }
}

const hasBegun = ({ data }: Options): boolean => existsSync(places(data).accounts);

function checkZone(zone: string): void {
  try {
    new Intl.DateTimeFormat('en-GB', { timeZone: zone });
  } catch (cause) {
    throw new StartFault('unknown-zone', zone, { cause });
  }
}
