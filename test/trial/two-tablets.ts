import type { StaffId } from '../../src/care/ids.ts';
import { Trial } from './home.ts';

/** A second tablet that knows everything the first does, and from now on works without signal. */
export function secondTablet(first: Trial, by: StaffId = first.by): Trial {
  const [policy] = first.home.service.policies;
  const second = new Trial(policy === undefined ? {} : { policy });
  for (const fact of first.facts) second.take(fact);
  second.device = 'T0000002';
  second.by = by;
  second.now = first.now;
  return second;
}

/** Both tablets reach the server: each learns what the other wrote. */
export function meet(first: Trial, second: Trial): void {
  const [ours, theirs] = [[...first.facts], [...second.facts]];
  for (const fact of theirs) if (!first.home.known.has(fact.id)) first.take(fact);
  for (const fact of ours) if (!second.home.known.has(fact.id)) second.take(fact);
}
