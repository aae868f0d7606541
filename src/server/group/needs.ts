import type { Parts } from '../parts.ts';
import type { HomeReader } from '../service/home-reader.ts';
import type { AskPeer } from './ask-peer.ts';
import type { GroupKeys } from './secret.ts';

/** What a home needs to be one of a group. */
export interface GroupNeeds {
  readonly parts: Parts;
  readonly reader: HomeReader;
  readonly keys: GroupKeys;
  readonly peers: readonly URL[];
  readonly ask: AskPeer;
}
