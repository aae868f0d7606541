import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { concludingWhole, factsIn, keysOn, ofKind, replacedBy } from '../home.ts';
import type { StaffId } from '../ids.ts';
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
const fromService = (grant: Grant) => grant.device.startsWith('S');

/**
 * A role counts if the service itself wrote it, or somebody who validly is or was a manager did.
 * Judged by who gave it, never by comparing two devices' clocks.
 */
const rights = concludingWhole((home): Rights => {
  const grants: Grant[] = [];
  const stands = new Set<Grant>();
  for (const id of keysOn(home, 'staff')) {
    const facts = factsIn(home, 'staff', id);
    const replaced = replacedBy(facts);
    for (const grant of ofKind(facts, 'staff.role')) {
      grants.push(grant);
      if (!replaced.has(grant.id)) stands.add(grant);
    }
  }
  const valid = validGrants(grants);
  return { ever: highest(valid), now: highest(valid.filter((grant) => stands.has(grant))) };
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
