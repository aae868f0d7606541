import { readFileSync } from 'node:fs';
import type { Parts } from '../parts.ts';
import type { HomeReader } from '../service/home-reader.ts';
import { StartFault } from '../start/faults.ts';
import type { GroupOptions } from '../start/group-options.ts';
import { askingPeers } from './ask-peer.ts';
import { Group } from './group.ts';
import { readGroupKeys } from './secret.ts';

/** This home in its group; undefined where it is in none. Throws a StartFault about a file. */
export function openGroup(
  parts: Parts,
  reader: HomeReader,
  options: GroupOptions | undefined,
): Group | undefined {
  if (options === undefined) return undefined;
  const keys = readGroupKeys(options.secret);
  const ask = askingPeers(keys.calls, options.authorities.map(readAuthority));
  return new Group({ parts, reader, keys, ask, peers: options.peers });
}

function readAuthority(file: string): string {
  try {
    const pem = readFileSync(file, 'utf8');
    if (pem.includes('-----BEGIN CERTIFICATE-----')) return pem;
  } catch (cause) {
    throw new StartFault('authority-unreadable', file, { cause });
  }
  throw new StartFault('authority-unreadable', file);
}
