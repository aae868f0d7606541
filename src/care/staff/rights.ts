import type { Fact, FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { concludingWhole, factsIn, keysOn, ofKind, replacedBy, standing } from '../home.ts';
import type { StaffId } from '../ids.ts';
import type { Day } from '../time.ts';
import type { Role } from './facts.ts';

interface Rights {
  /** Highest role ever given by somebody who could give it. */
  readonly ever: ReadonlyMap<StaffId, Role>;
  /** Highest role that stands now. */
  readonly now: ReadonlyMap<StaffId, Role>;
}

const RANK: Record<Role, number> = { worker: 0, senior: 1, manager: 2 };
type Grant = FactOf<'staff.role'>;

/** The service's own device begins with S: the first manager is written down by it, at the start. */
const fromService = (fact: Fact) => fact.device.startsWith('S');

/**
 * A role counts if the service itself wrote it, or somebody who validly is or was a manager did.
 * Judged by who gave it, never by comparing two devices' clocks.
 */
const rights = concludingWhole((home): Rights => {
  const grants: Grant[] = [];
  for (const id of keysOn(home, 'staff'))
    grants.push(...ofKind(factsIn(home, 'staff', id), 'staff.role'));
  const valid = validGrants(grants);
  // What somebody wrote who could not give it takes nobody's role away either.
  const replaced = replacedBy(valid);
  return { ever: highest(valid), now: highest(valid.filter(({ id }) => !replaced.has(id))) };
});

function validGrants(grants: readonly Grant[]): Grant[] {
  const managers = new Set<StaffId>();
  let valid: Grant[] = [];
  for (;;) {
    const next = grants.filter((grant) => fromService(grant) || managers.has(grant.by));
    if (next.length === valid.length) return next;
    valid = next;
    for (const { data } of valid) if (data.role === 'manager') managers.add(data.staff);
  }
}

function highest(grants: readonly Grant[]): Map<StaffId, Role> {
  const roles = new Map<StaffId, Role>();
  for (const { data } of grants) {
    const had = roles.get(data.staff);
    if (had === undefined || RANK[data.role] > RANK[had]) roles.set(data.staff, data.role);
  }
  return roles;
}

const atLeast = (role: Role | undefined, needed: Role) =>
  role !== undefined && RANK[role] >= RANK[needed];

/** Whether somebody holds this role or a higher one now: what a screen offers, what decide allows. */
export const ranks = (home: Home, staff: StaffId, needed: Role): boolean =>
  atLeast(rights(home).now.get(staff), needed);

/** Whether somebody ever held it: how stored facts are judged, for old decisions stay decided. */
export const everRanked = (home: Home, staff: StaffId, needed: Role): boolean =>
  atLeast(rights(home).ever.get(staff), needed);

/** The role somebody holds by right; undefined for none, and for one they gave themselves. */
export const rankOf = (home: Home, staff: StaffId): Role | undefined => rights(home).now.get(staff);

/** The day somebody left, as the service or a manager said: on no other word is anybody shut out. */
export function leftByRight(home: Home, staff: StaffId): Day | undefined {
  const said = factsIn(home, 'staff', staff).filter(
    (fact) => fromService(fact) || everRanked(home, fact.by, 'manager'),
  );
  return standing(said, 'staff.left').at(-1)?.data.on;
}
