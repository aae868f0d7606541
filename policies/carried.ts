import type { Policy } from '../src/care/policy/policy.ts';
import { readPolicy } from '../src/care/policy/policy.ts';
import windlestrawHouse1 from './windlestraw-house-1.json' with { type: 'json' };

/** Every policy file that the program carries, as written: a digest is made of exactly this. */
export const carriedFiles: readonly unknown[] = [windlestrawHouse1];

/** The same, read. A file that cannot be read is a fault of the program, found by its tests. */
export function carriedPolicies(): Policy[] {
  return carriedFiles.map((file) => {
    const read = readPolicy(file);
    if (!read.ok) throw new Error(`policy ${read.where}: ${read.what}`);
    return read.policy;
  });
}
