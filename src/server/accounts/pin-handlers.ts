import type { StaffId } from '../../care/ids.ts';
import { instantOf } from '../../care/time.ts';
import { pinFault } from '../../procedures/access/pin.ts';
import { PERSON_ANYWHERE } from '../../procedures/access/tries.ts';
import type { ChangePinRequest, TabletKeys } from '../../procedures/access/wire.ts';
import { type Answer, give, turn } from '../answer.ts';
import type { Parts } from '../parts.ts';
import type { Colleague } from '../rights/rights.ts';
import type { DeviceLine } from './devices.ts';
import { hashPin, verifyPin } from './pins.ts';
import { changeOwnPin } from './sign-in.ts';
import { tabletKeys } from './tablet-keys.ts';

/** Somebody changes their own PIN, showing the old one again. */
export async function changePin(
  parts: Parts,
  { pin, newPin }: ChangePinRequest,
  by: {
    readonly colleague: Colleague;
    readonly device?: DeviceLine;
    /** The cookie of the session it is changed in, which goes on. */
    readonly token?: string | undefined;
  },
): Promise<Answer<{ readonly tablet?: TabletKeys }>> {
  const { accounts, now } = parts;
  const { staff } = by.colleague;
  const credential = accounts.credentials.of(staff);
  if (!credential) return turn({ reason: 'wrong' });
  const door = { name: `person ${staff} ${credential.epoch}`, limit: PERSON_ANYWHERE };
  const waitMs = accounts.together(() => accounts.doors.knock([door], now()));
  if (waitMs > 0) return turn({ reason: 'wait', waitMs });
  if (!(await verifyPin(credential.hash, pin))) return turn({ reason: 'wrong' });
  accounts.doors.opened([door]);
  const fault = newPin === pin ? 'same-as-before' : pinFault(newPin);
  if (fault) return turn({ reason: 'pin-refused', fault });
  await changeOwnPin(parts, by.colleague, { pin: newPin, token: by.token });
  const tablet = by.device && tabletKeys(parts, by.device, staff);
  return give(tablet ? { tablet } : {});
}

export interface GivenPin {
  readonly staff: StaffId;
  readonly pin: string;
  readonly mustChange: boolean;
}

/** A manager gives a colleague a PIN, which they must change at their first sign-in. */
export async function setPin(
  parts: Parts,
  to: Omit<GivenPin, 'mustChange'> & { readonly mustChange?: boolean },
  by: string,
): Promise<Answer<null>> {
  if ((await parts.rights.colleague(to.staff)) === undefined) return turn({ reason: 'not-found' });
  const fault = pinFault(to.pin);
  if (fault) return turn({ reason: 'pin-refused', fault });
  await givePin(parts, { mustChange: true, ...to }, by);
  return give(null);
}

/** The same without asking who it is for or whether the PIN is good. */
export async function givePin(
  { accounts, pinCost, now }: Parts,
  { staff, pin, mustChange }: GivenPin,
  by: string,
): Promise<void> {
  const hash = await hashPin(pin, pinCost);
  const at = instantOf(now());
  accounts.together(() => {
    accounts.credentials.set(staff, { hash, mustChange, at, by });
    accounts.sessions.endAllOf(staff);
    accounts.events.add({ at, what: 'pin-set', by, about: staff });
  });
}

/** Somebody's PIN opens nothing any more: at once here, at next contact on each tablet. */
export function endPin(parts: Parts, staff: StaffId, by: string): Answer<null> {
  const { accounts, now } = parts;
  const at = instantOf(now());
  if (!accounts.credentials.of(staff)) return turn({ reason: 'not-found' });
  accounts.together(() => {
    accounts.credentials.end(staff, at, by);
    accounts.sessions.endAllOf(staff);
    accounts.events.add({ at, what: 'pin-ended', by, about: staff });
  });
  return give(null);
}
