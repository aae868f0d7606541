import { isIP } from 'node:net';
import { resolve } from 'node:path';

/** The homes with which a server shares which codes are used. */
export interface GroupOptions {
  /** File of the secret that all homes of the group have. */
  readonly secret: string;
  /** Addresses of the other homes' servers. */
  readonly peers: readonly URL[];
  /** Files of certificates (PEM) of those that have an authority of their own. */
  readonly authorities: readonly string[];
}

export interface GroupGiven {
  readonly 'group-secret'?: string;
  readonly 'group-peer'?: readonly string[];
  readonly 'group-authority'?: readonly string[];
}

/** Undefined where no group is asked for; a text that says what is wrong with what was given. */
export function groupOptions(given: GroupGiven, cwd: string): GroupOptions | string | undefined {
  const { 'group-secret': secret, 'group-peer': addresses = [] } = given;
  const authorities = given['group-authority'] ?? [];
  if (secret === undefined && addresses.length === 0 && authorities.length === 0) return undefined;
  if (secret === undefined)
    return '--group-peer needs --group-secret FILE. Draw one: tallyround group-secret FILE';
  const peers: URL[] = [];
  for (const address of addresses) {
    const peer = peerIn(address);
    if (typeof peer === 'string') return `--group-peer ${address}: ${peer}`;
    peers.push(peer);
  }
  return {
    peers,
    secret: resolve(cwd, secret),
    authorities: authorities.map((file) => resolve(cwd, file)),
  };
}

function peerIn(address: string): URL | string {
  if (!URL.canParse(address)) return 'give an address such as https://home.example:8240';
  const url = new URL(address);
  if (url.username !== '' || url.password !== '' || url.search !== '' || url.hash !== '')
    return 'only a name and a port; no secret stands in an address.';
  if (url.pathname !== '/') return 'only a name and a port; no path.';
  const secure = url.protocol === 'https:' || (url.protocol === 'http:' && isLoopback(url));
  return secure ? url : 'only https. Plain http would let anybody on the way read along.';
}

const isLoopback = ({ hostname }: URL): boolean =>
  hostname === 'localhost' ||
  hostname === '[::1]' ||
  (isIP(hostname) === 4 && hostname.startsWith('127.'));
