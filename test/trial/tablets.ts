import { Trial } from './home.ts';

/** A second tablet that knows all the first one does, and from here on hears nothing of it. */
export function secondTablet(first: Trial, device = 'T0000002'): Trial {
  const [policy] = first.home.service.policies;
  const second = new Trial({ zone: first.home.service.zone, ...(policy && { policy }) });
  for (const fact of first.facts) second.take(fact);
  return Object.assign(second, { device, by: first.by, now: first.now });
}

/** Each takes in what only the other has. */
export function meet(first: Trial, second: Trial): void {
  const [mine, theirs] = [[...first.facts], [...second.facts]];
  for (const fact of mine) if (!second.home.known.has(fact.id)) second.take(fact);
  for (const fact of theirs) if (!first.home.known.has(fact.id)) first.take(fact);
}
