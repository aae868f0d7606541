import windlestraw1 from '../policies/windlestraw-house-1.json' with { type: 'json' };
import { readPolicy } from '../src/care/policy/policy.ts';
import { policyDigest } from '../src/procedures/policy-digest.ts';
import type { DemoSource } from '../src/server/demo/source.ts';
import { demoHome } from './home.ts';

/** The same people on every machine; the ids of what happened differ by the day it is made. */
const SEED = 7;

/** Windlestraw House, for a server that starts without a service of its own. */
export const windlestraw: DemoSource = {
  title: 'Windlestraw House (invented)',
  zone: 'Europe/London',
  make: ({ head, device, hash, now, zone }) => {
    const read = readPolicy(windlestraw1);
    if (!read.ok) throw new Error(`${read.where}: ${read.what}`);
    const service = { zone, policies: [read.policy] };
    const digest = policyDigest(windlestraw1, hash);
    return demoHome(service, { head, device, hash }, { seed: SEED, now, policyDigest: digest });
  },
};
