import type { Home } from '../home.ts';
import { factsIn } from '../home.ts';
import type { StaffId, TestId } from '../ids.ts';
import type { Instant } from '../time.ts';
import type { Stage } from './test.ts';
import { testOf } from './test.ts';

/** Where a kit was last heard of: how far it was, when, and in whose hands. */
export interface LastSeen {
  readonly stage: Stage;
  readonly at: Instant;
  readonly by: StaffId;
  readonly device: string;
}

/** The last thing that was done with a kit, for whoever has to look for it. */
export function lastSeen(home: Home, id: TestId): LastSeen | undefined {
  const last = factsIn(home, 'test', id).findLast((fact) => 'turn' in fact.data);
  if (last === undefined) return undefined;
  const { at, by, device } = last;
  return { stage: testOf(home, id).stage, at, by, device };
}
