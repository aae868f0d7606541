import type { NetworkInterfaceInfo } from 'node:os';

export type Interfaces = NodeJS.Dict<readonly NetworkInterfaceInfo[]>;

/**
 * Addresses under which tablets in the home reach this machine: the usual ones of a home first, then
 * others. Of IPv6 only the home's own: link-local ones cannot stand in a link, and global ones change
 * every day.
 */
export function homeAddresses(interfaces: Interfaces): readonly string[] {
  const all = Object.values(interfaces)
    .flatMap((list) => list ?? [])
    .filter(
      ({ internal, address, family }) =>
        !internal && (family === 'IPv4' || /^f[cd]/i.test(address)),
    );
  const rank = ({ address, family }: NetworkInterfaceInfo): number =>
    family !== 'IPv4' ? 3 : /^192\.168\./.test(address) ? 0 : /^10\./.test(address) ? 1 : 2;
  return all.sort((a, b) => rank(a) - rank(b)).map(({ address }) => address);
}

/** How an address stands in a link. */
export const inUrl = (address: string): string =>
  address.includes(':') ? `[${address}]` : address;
