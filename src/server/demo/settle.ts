import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dayOf, instantOf } from '../../care/time.ts';
import { setPin } from '../accounts/pin-handlers.ts';
import type { Parts } from '../parts.ts';
import { writeFacts } from '../service/write-facts.ts';
import { type DemoHome, type DemoStaff, demoHome } from './source.ts';

const SEED = 20261125;
export const DEMO_ZONE = 'Europe/London';

/** The invented home as it would be today. */
export const demoToday = (now: number): DemoHome =>
  demoHome({ seed: SEED, today: dayOf(instantOf(now), DEMO_ZONE), zone: DEMO_ZONE });

/** Moves the invented home into an empty service. Its PINs are printed, so nobody has to change them. */
export async function settleDemo(parts: Parts, home: DemoHome, file: string): Promise<void> {
  await writeFacts(parts.ledger, home.facts, parts.random);
  for (const { id, pin } of home.staff) {
    const set = await setPin(parts, { staff: id, pin, mustChange: false }, 'demo');
    if (!set.ok) throw new Error(`${id}: ${set.turned.reason}`);
  }
  writeFileSync(file, JSON.stringify(home.staff, null, 2));
}

/** How to sign in to the invented home in this folder; empty for a real service. */
export function demoSignIns(file: string): readonly DemoStaff[] {
  if (!existsSync(file)) return [];
  return JSON.parse(readFileSync(file, 'utf8')) as DemoStaff[];
}
