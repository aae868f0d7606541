import type { StaffId } from '../../care/ids.ts';
import type { Role } from '../../care/staff/facts.ts';

export interface Colleague {
  readonly staff: StaffId;
  readonly name: string;
  /** What everybody calls them; on the sign-in screen instead of the whole name. */
  readonly called: string;
  readonly role: Role;
}

/** Who works here and as what, today. The server asks; what is true is concluded from facts. */
export interface Rights {
  /** Undefined for a stranger, for somebody without a role, and for whoever has left. */
  colleague(staff: StaffId): Promise<Colleague | undefined>;
  /** Those who work here under a typed name, full or as everybody calls them. */
  named(typed: string): Promise<readonly Colleague[]>;
  everybody(): Promise<readonly Colleague[]>;
}

const RANK: Record<Role, number> = { worker: 0, senior: 1, manager: 2 };

export const atLeast = (role: Role, needed: Role): boolean => RANK[role] >= RANK[needed];
