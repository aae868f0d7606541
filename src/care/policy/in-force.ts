import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { concluding, factsIn, ofKind, standing } from '../home.ts';
import type { Day } from '../time.ts';
import type { KitKind, Policy, TestKind } from './policy.ts';
import { readPolicy } from './policy.ts';

export interface InForce {
  readonly policy: Policy;
  /** The fact by which a named person confirmed it; absent only before anybody has. */
  readonly confirmed?: FactOf<'policy.confirmed'>;
}

/**
 * The policy in force on a day: the confirmation with the latest `from` on or before it. Before any
 * confirmation the first policy carried is used, and Now says that somebody must confirm it.
 */
export function policyOn(home: Home, on: Day): InForce {
  const confirmed = standing(factsIn(home, 'policy', 'confirmed'), 'policy.confirmed')
    .filter((fact) => fact.data.from <= on)
    .sort((a, b) => (a.data.from < b.data.from ? -1 : a.data.from > b.data.from ? 1 : 0))
    .at(-1);
  const found = confirmed && textOf(home, confirmed);
  if (confirmed !== undefined && found !== undefined) return { policy: found, confirmed };
  const [first] = home.service.policies;
  if (first === undefined) throw new Error('no policy is carried: a service needs at least one');
  return { policy: first };
}

/**
 * The very text that was confirmed: two managers who could not hear of each other may each have written the
 * same version. A file that the program carries has no digest in the facts; whether it is still the one
 * that was confirmed is told where it is shown.
 */
export function textOf(home: Home, { data }: FactOf<'policy.confirmed'>): Policy | undefined {
  const { policy, version, digest } = data;
  const own = written(home, 'written').find((text) => text.digest === digest);
  if (own !== undefined) return own.policy;
  return home.service.policies.find(
    (carried) => carried.policy === policy && carried.version === version,
  );
}

/** The files the program carries and those the service wrote down itself, oldest first. */
export const policiesKnown = (home: Home): readonly Policy[] => [
  ...home.service.policies,
  ...written(home, 'written').map(({ policy }) => policy),
];

interface Written {
  readonly digest: string;
  readonly policy: Policy;
}

/** Each text once, though two may have written it down. */
const written = concluding('policy', (facts): Written[] => {
  const texts = new Map<string, Written>();
  for (const { data } of ofKind(facts, 'policy.written')) {
    if (texts.has(data.digest)) continue;
    const read = readPolicy(parsed(data.text));
    if (read.ok) texts.set(data.digest, { digest: data.digest, policy: read.policy });
  }
  return [...texts.values()];
});

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

export const kitKindOf = (policy: Policy, id: string): KitKind | undefined =>
  policy.kits.find((kit) => kit.id === id);
export const testKindOf = (policy: Policy, id: string): TestKind | undefined =>
  policy.tests.find((test) => test.id === id);
