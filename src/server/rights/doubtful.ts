import type { StaffId } from '../../care/ids.ts';
import type { Body } from '../../ledger/fact.ts';
import type { DeviceId, FactId } from '../../ledger/ids.ts';
import type { Pushed } from '../../ledger/sync-message.ts';
import type { Doubt } from '../accounts/doubts.ts';
import type { Parts } from '../parts.ts';

const KINDS: ReadonlySet<string> = new Set(['staff.role', 'staff.left', 'staff.returned']);

interface AboutStaff {
  readonly staff: StaffId;
  readonly role?: string;
}

/**
 * Facts that make somebody a manager, or say that a manager is none, in the name of somebody who is
 * not signed in on the tablet that brings them. A tablet may have been tampered with and can write in
 * anybody's name; whoever may give PINs is not decided on its word alone.
 */
export async function doubtfulIn(
  parts: Parts,
  push: readonly Pushed[],
  device: DeviceId,
): Promise<readonly Doubt[]> {
  const found: Doubt[] = [];
  for (const { body: text } of push) {
    const body = aboutManagers(text);
    if (body === undefined) continue;
    const by = body.by as string as StaffId;
    if (!(await touchesManager(parts, body.data as unknown as AboutStaff))) continue;
    if (parts.accounts.sessions.holds(by, device, parts.now())) continue;
    found.push({ fact: parts.ledger.hash(text) as FactId, staff: by, device });
  }
  if (found.length === 0) return found;
  const known = await parts.ledger.store.known(found.map(({ fact }) => fact));
  return found.filter(({ fact }) => !known.has(fact));
}

/** The body, where it is of one of these kinds; what is no fact at all is refused by its form later. */
function aboutManagers(text: string): Body | undefined {
  if (![...KINDS].some((kind) => text.includes(`"${kind}"`))) return undefined;
  try {
    const body = JSON.parse(text) as Body;
    return KINDS.has(body.kind) ? body : undefined;
  } catch {
    return undefined;
  }
}

const touchesManager = async (parts: Parts, { staff, role }: AboutStaff): Promise<boolean> =>
  role === 'manager' || (await parts.rights.colleague(staff))?.role === 'manager';
