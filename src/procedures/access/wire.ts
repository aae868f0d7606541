import * as v from 'valibot';
import { type StaffId, staffId } from '../../care/ids.ts';
import type { Role } from '../../care/staff/facts.ts';
import type { Instant } from '../../care/time.ts';
import type { PinFault } from './pin.ts';

/** What a tablet and its server say to each other about who may come in. Secrets are base64url. */

/** Proves that the page itself makes the call: the half of a session that no cookie carries. */
export const SESSION_KEY_HEADER = 'x-tallyround-key';
/** The half of a tablet's credential that no cookie carries. */
export const SYNC_KEY_HEADER = 'x-tallyround-sync';

const typedPin = v.pipe(v.string(), v.minLength(1), v.maxLength(64));
const typedName = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
const deviceName = v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(60));
const secret = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{43}$/));
const deviceId = v.pipe(v.string(), v.regex(/^T[A-Za-z0-9_-]{7}$/));

export const signInRequest = v.strictObject({
  who: v.union([v.strictObject({ staff: staffId }), v.strictObject({ name: typedName })]),
  pin: typedPin,
  /** Given when the PIN must be changed, or may be. */
  newPin: v.exactOptional(typedPin),
});
export type SignInRequest = v.InferOutput<typeof signInRequest>;

export interface SignedIn {
  readonly staff: StaffId;
  readonly name: string;
  readonly called: string;
  readonly role: Role;
  /** The other half of the session; kept in memory only. */
  readonly key: string;
  /** Present on an enrolled tablet. */
  readonly tablet?: TabletKeys;
}

export interface TabletKeys {
  readonly device: string;
  /** Opens what rests on the tablet. */
  readonly tabletKey: string;
  readonly lease: Instant;
  readonly rules: TabletRules;
}

export interface TabletRules {
  readonly title: string;
  readonly zone: string;
  readonly idleMinutes: number;
  readonly idleMinutesKitOpen: number;
  readonly leaseDays: number;
}

export const changePinRequest = v.strictObject({ pin: typedPin, newPin: typedPin });
export type ChangePinRequest = v.InferOutput<typeof changePinRequest>;

export const setPinRequest = v.strictObject({ pin: typedPin });

export const enrolRequest = v.strictObject({
  name: deviceName,
  osLock: v.boolean(),
  diskEncrypted: v.boolean(),
  /** This tablet was enrolled before and still holds facts under its old key. */
  before: v.exactOptional(
    v.strictObject({
      device: deviceId,
      /** Needed only when the server has deleted it, because the tablet was said to be lost. */
      tabletKey: v.exactOptional(secret),
    }),
  ),
});
export type EnrolRequest = v.InferOutput<typeof enrolRequest>;

export interface Enrolled {
  readonly device: string;
  readonly service: string;
  readonly name: string;
  readonly syncKey: string;
  readonly tabletKey: string;
  readonly lease: Instant;
  readonly rules: TabletRules;
}

export const renameRequest = v.strictObject({ name: deviceName });
export const retireRequest = v.strictObject({ lost: v.boolean() });

/** Whether other homes of the group have used a code, as far as they could be asked in time. */
export interface UsedElsewhere {
  /** Whether this home is in a group at all. */
  readonly group: boolean;
  readonly used: boolean;
  /** What the homes that have used it call themselves, where they say so. */
  readonly homes: readonly string[];
  /** Every home has answered; if not, the server asks again by itself. */
  readonly complete: boolean;
}

/** Every reason for which the server turns a call away, apart from those of the sync itself. */
export type Turned =
  | { readonly reason: 'wrong' }
  | { readonly reason: 'wait'; readonly waitMs: number }
  | { readonly reason: 'pin-must-change' }
  | { readonly reason: 'pin-refused'; readonly fault: PinFault }
  | { readonly reason: 'not-signed-in' }
  | { readonly reason: 'needs-manager' }
  | { readonly reason: 'device-unknown' }
  | { readonly reason: 'device-retired' }
  | { readonly reason: 'tablet-key-gone' }
  | { readonly reason: 'other-page' }
  | { readonly reason: 'other-host' }
  | { readonly reason: 'bad-request'; readonly where: string; readonly what: string }
  | { readonly reason: 'not-found' }
  | { readonly reason: 'too-large' }
  | { readonly reason: 'too-many-calls' }
  | { readonly reason: 'storage'; readonly what: 'full' | 'busy' | 'read-only' | 'broken' }
  | { readonly reason: 'fault' };
export type TurnedReason = Turned['reason'];
