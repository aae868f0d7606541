import type { Test } from '../custody/test.ts';
import type { Home } from '../home.ts';
import { kitKindOf, policyOn } from '../policy/in-force.ts';
import type { KitKind } from '../policy/policy.ts';
import type { Instant } from '../time.ts';
import { after, HOUR } from '../time.ts';
import type { Round } from './round.ts';
import { tallyOf } from './tally.ts';

/** Tubes of a round that are packed and still in the house. */
export interface Uncollected {
  /** Oldest swab first. */
  readonly tests: readonly Test[];
  readonly kit: KitKind;
  /** When the oldest has waited as long as its kit allows: elapsed time from its swab. */
  readonly keepsUntil: Instant;
}

/** The instant up to which a swab keeps in its kit: elapsed time, whatever the clocks on the wall do. */
export const keepsUntil = (taken: Instant, kit: KitKind): Instant =>
  after(taken, kit.storage.hours * HOUR);

/** What is still here and how long it keeps, by the kit's own storage limit; undefined when nothing is. */
export function uncollected(home: Home, round: Round): Uncollected | undefined {
  const gone = new Set(round.boxes.filter((box) => box.handed.length > 0).map((box) => box.id));
  const tests = tallyOf(home, round)
    .packed.filter((test) => test.box !== undefined && !gone.has(test.box))
    .toSorted((a, b) => ((a.taken?.at ?? '') < (b.taken?.at ?? '') ? -1 : 1));
  const oldest = tests[0]?.taken?.at;
  const { day, kitKind } = round.planned.data;
  const kit = kitKindOf(policyOn(home, day).policy, kitKind);
  if (oldest === undefined || kit === undefined) return undefined;
  return { tests, kit, keepsUntil: keepsUntil(oldest, kit) };
}
