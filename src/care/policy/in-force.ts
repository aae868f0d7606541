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
  const found =
    confirmed &&
    policiesKnown(home).find(
      ({ policy, version }) =>
        policy === confirmed.data.policy && version === confirmed.data.version,
    );
  if (confirmed !== undefined && found !== undefined) return { policy: found, confirmed };
  const [first] = home.service.policies;
  if (first === undefined) throw new Error('no policy is carried: a service needs at least one');
  return { policy: first };
}

/** The files the program carries and those the service wrote down itself, oldest first. */
export const policiesKnown = (home: Home): readonly Policy[] => [
  ...home.service.policies,
  ...written(home, 'written'),
];

const written = concluding('policy', (facts): Policy[] =>
  ofKind(facts, 'policy.written').flatMap((fact) => {
    const read = readPolicy(parsed(fact.data.text));
    return read.ok ? [read.policy] : [];
  }),
);

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
