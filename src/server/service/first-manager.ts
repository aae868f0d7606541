import { idFromBytes, type StaffId } from '../../care/ids.ts';
import { instantOf } from '../../care/time.ts';
import { pinFault } from '../../procedures/access/pin.ts';
import { givePin } from '../accounts/pin-handlers.ts';
import type { Random } from '../accounts/secrets.ts';
import type { Parts } from '../parts.ts';
import { keepAsArrived, pen, serverDesk } from './write-facts.ts';

export interface FirstManager {
  readonly staff: StaffId;
  readonly name: string;
  /** To be changed at the first sign-in. */
  readonly pin: string;
}

/** Begins a real service: one manager, who enrols the first tablet and adds everybody else. */
export async function addFirstManager(parts: Parts, name: string): Promise<FirstManager> {
  const staff = idFromBytes(parts.random(12)) as StaffId;
  const [at, by] = [instantOf(parts.now()), staff];
  const said = [
    { kind: 'staff.described', data: { staff, about: 'name' }, private: { value: name }, at, by },
    { kind: 'staff.role', data: { staff, role: 'manager' }, at, by },
  ] as const;
  const pin = drawPin(parts.random);
  // The PIN first: a ledger with facts is never begun again.
  await givePin(parts, { staff, pin, mustChange: true }, 'start');
  await keepAsArrived(parts.ledger, pen(said, await serverDesk(parts.ledger, parts.random)));
  return { staff, name, pin };
}

/** Six digits, all equally likely but for those that are too plain. */
export function drawPin(random: Random): string {
  for (;;) {
    const [a = 0, b = 0, c = 0, d = 0] = random(4);
    const number = ((a << 24) | (b << 16) | (c << 8) | d) >>> 0;
    // The last, incomplete million of 2^32 would favour small numbers.
    if (number >= 4_294_000_000) continue;
    const pin = String(number % 1_000_000).padStart(6, '0');
    if (pinFault(pin) === undefined) return pin;
  }
}
