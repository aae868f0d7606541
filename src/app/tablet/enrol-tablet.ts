import type { EnrolRequest } from '../../procedures/access/wire.ts';
import { base64url, fromBase64url } from './base64url.ts';
import type { Calls } from './calls.ts';
import type { Door, Enrolment } from './door/door.ts';
import type { Keys, Opened } from './keys.ts';
import type { EnrolledHere, Enrolling, SigningIn } from './tablet.ts';

interface Parts {
  readonly door: Door;
  readonly calls: Calls;
  readonly keys: Keys;
}

type Done = Pick<Opened, 'ok' | 'key' | 'who'> | Extract<EnrolledHere, { readonly ok: false }>;

/**
 * A manager signs in on this browser and makes a tablet of it. What rests here from before stays
 * readable: the server gives its key again, or, when it has deleted it, takes it from here.
 */
export async function enrolTablet(
  { door, calls, keys }: Parts,
  manager: SigningIn,
  as: Enrolling,
): Promise<Done> {
  const signedIn = await calls.signIn(manager);
  if (!signedIn.ok) return signInFault(signedIn.turned);
  if (signedIn.value.role !== 'manager') return { ok: false, reason: 'needs-manager' };
  const pin = manager.newPin ?? manager.pin;
  const before = as.anew === true ? undefined : await door.enrolment();
  const { staff, called } = signedIn.value;
  const held = before && (await keys.keyBy(staff, manager.pin));
  const heard = await calls.enrol(requestFor(as, before, held));
  held?.fill(0);
  if (!heard.ok) return enrolFault(heard.turned);
  const enrolment = await keys.keepEnrolment(heard.value, before);
  const key = fromBase64url(heard.value.tabletKey);
  await keys.keepFor({ staff, called }, key, { pin, enrolment });
  return { ok: true, key, who: { staff, called } };
}

function requestFor(
  { name, osLock, diskEncrypted }: Enrolling,
  before: Enrolment | undefined,
  held: Uint8Array | undefined,
): EnrolRequest {
  const base = { name, osLock, diskEncrypted };
  if (!before) return base;
  const { device } = before;
  return { ...base, before: { device, ...(held && { tabletKey: base64url(held) }) } };
}

type Failed = Extract<EnrolledHere, { readonly ok: false }>;
type Heard = Extract<Awaited<ReturnType<Calls['enrol']>>, { readonly ok: false }>['turned'];

function signInFault(turned: Heard): Failed {
  switch (turned.reason) {
    case 'no-contact':
      return { ok: false, reason: 'no-contact' };
    case 'wrong':
    case 'wait':
    case 'pin-must-change':
    case 'pin-refused':
      return { ok: false, ...turned };
    default:
      return { ok: false, reason: 'refused', turned };
  }
}

function enrolFault(turned: Heard): Failed {
  switch (turned.reason) {
    case 'no-contact':
    case 'needs-manager':
    case 'tablet-key-gone':
      return { ok: false, reason: turned.reason };
    default:
      return { ok: false, reason: 'refused', turned };
  }
}
