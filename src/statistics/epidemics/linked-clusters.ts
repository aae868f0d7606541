import { nonNegative } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';

export interface Case {
  readonly id: string;
  readonly day: number;
  readonly unit?: string;
  readonly staff?: readonly string[];
}

export interface LinkedClusters {
  /** Pairs linked, in the order of the cases. */
  readonly links: readonly (readonly [string, string])[];
  /** Cases joined by links, however many between; in the order of the cases. */
  readonly clusters: readonly (readonly string[])[];
}

/** Close in days, and a place or a person in common. Exactly `windowDays` apart counts as close. */
function linked(a: Case, b: Case, windowDays: number): boolean {
  if (Math.abs(a.day - b.day) > windowDays) return false;
  if (a.unit !== undefined && a.unit === b.unit) return true;
  return a.staff?.some((s) => b.staff?.includes(s)) ?? false;
}

/** Union by the smaller index, so that a cluster is named by its first case. */
function rootOf(parent: number[], i: number): number {
  let root = i;
  while (parent[root] !== root) root = parent[root] as number;
  parent[i] = root;
  return root;
}

/**
 * Cases linked by time and by unit or shared staff, and the clusters that single linkage makes of
 * them: two cases far apart in time fall together when a chain of links joins them.
 */
export function linkedClusters(
  cases: readonly Case[],
  windowDays: number,
): Outcome<LinkedClusters> {
  const refused = nonNegative('windowDays', windowDays);
  if (refused) return refused;
  const seen = new Set<string>();
  for (const { id, day } of cases) {
    if (seen.has(id)) return refuse('out-of-range', `The case "${id}" is there twice.`);
    if (!Number.isFinite(day))
      return refuse('not-a-number', `The day of case "${id}" is not a number.`);
    seen.add(id);
  }
  const parent = cases.map((_, i) => i);
  const links: (readonly [string, string])[] = [];
  cases.forEach((a, i) => {
    for (let j = i + 1; j < cases.length; j++) {
      const b = cases[j] as Case;
      if (!linked(a, b, windowDays)) continue;
      links.push([a.id, b.id]);
      const [x, y] = [rootOf(parent, i), rootOf(parent, j)];
      parent[Math.max(x, y)] = Math.min(x, y);
    }
  });
  const byRoot = new Map<number, string[]>();
  cases.forEach((c, i) => {
    const root = rootOf(parent, i);
    byRoot.set(root, [...(byRoot.get(root) ?? []), c.id]);
  });
  return given({ links, clusters: [...byRoot.values()] });
}
