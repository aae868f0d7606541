import { isIP } from 'node:net';

/**
 * Whether a call may be addressed to this host. A page elsewhere can point a name of its own at a
 * machine inside the home (DNS rebinding); it cannot do so with a bare address or with `localhost`.
 */
export function hostAllowed(host: string, names: ReadonlySet<string>): boolean {
  const name = hostName(host);
  if (name === undefined) return false;
  if (isIP(name) !== 0) return true;
  return name === 'localhost' || names.has(name);
}

/** The name in a Host field, lower case, without port, brackets or the root's dot. */
function hostName(host: string): string | undefined {
  const found = /^(?:\[([0-9a-fA-F:.]+)\]|([A-Za-z0-9.-]+))(?::\d{1,5})?$/.exec(host);
  return (found?.[1] ?? found?.[2])?.toLowerCase().replace(/\.$/, '');
}
