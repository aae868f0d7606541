import windlestraw from '../../policies/windlestraw-house-1.json' with { type: 'json' };
import type { Service } from '../../src/care/home.ts';
import { readPolicy } from '../../src/care/policy/policy.ts';
import type { ServiceId } from '../../src/ledger/ids.ts';

/** The service of the frozen home, as `realFacts` goes on writing it. */
export const service = 'windlestraw' as ServiceId;

const read = readPolicy(windlestraw);
if (!read.ok) throw new Error(`${read.where}: ${read.what}`);
export const realService: Service = { zone: 'Europe/London', policies: [read.policy] };
