import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dayOf, instantOf } from '../../care/time.ts';
import { givePin } from '../accounts/pin-handlers.ts';
import type { Parts } from '../parts.ts';
import { keepAsArrived, serverDesk } from '../service/write-facts.ts';
import type { DemoSource, DemoStaff } from './source.ts';

/** Moves the invented home into an empty service. Its PINs are printed, so nobody has to change them. */
export async function settleDemo(parts: Parts, source: DemoSource, file: string): Promise<void> {
  const { ledger, random, now, accounts } = parts;
  const { zone } = accounts.settings;
  const desk = await serverDesk(ledger, random);
  const home = source.make({
    ...desk,
    zone,
    now: instantOf(now()),
    today: dayOf(instantOf(now()), zone),
  });
  writeFileSync(file, JSON.stringify(home.staff, null, 2), { mode: 0o600 });
  // PINs first: a ledger with facts is never begun again.
  for (const { id, pin } of home.staff)
    await givePin(parts, { staff: id, pin, mustChange: false }, 'demo');
  await keepAsArrived(ledger, home);
}

/** How to sign in to the invented home in this folder; empty for a real service. */
export function demoSignIns(file: string): readonly DemoStaff[] {
  if (!existsSync(file)) return [];
  return JSON.parse(readFileSync(file, 'utf8')) as DemoStaff[];
}
