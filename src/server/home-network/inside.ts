import { BlockList, isIP } from 'node:net';

/**
 * Addresses that exist only inside a home (RFC 1918, 3927, 6598, 1122; 4193, 4291 for IPv6) and the
 * endings of names that do (RFC 6762 `.local`, RFC 8375 `.home.arpa`, RFC 6761 `localhost`, and two in
 * common use by routers). A certificate of ours may be for these.
 */
export const INSIDE_IPV4 = [
  '10.0.0.0/8',
  '172.16.0.0/12',
  '192.168.0.0/16',
  '169.254.0.0/16',
  '100.64.0.0/10',
  '127.0.0.0/8',
];
export const INSIDE_IPV6 = ['fc00::/7', 'fe80::/10', '::1/128'];
export const INSIDE_NAMES = ['local', 'home.arpa', 'internal', 'lan', 'localhost'];

const list = new BlockList();
for (const [ranges, family] of [
  [INSIDE_IPV4, 'ipv4'],
  [INSIDE_IPV6, 'ipv6'],
] as const)
  for (const range of ranges) {
    const [net = '', prefix] = range.split('/');
    list.addSubnet(net, Number(prefix), family);
  }

export function isInside(name: string): boolean {
  const version = isIP(name);
  if (version !== 0) return list.check(name, version === 4 ? 'ipv4' : 'ipv6');
  return INSIDE_NAMES.some((ending) => name === ending || name.endsWith(`.${ending}`));
}
