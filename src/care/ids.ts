import * as v from 'valibot';

/**
 * Every id is branded: a tube's test does not type-check as a person. Ids are drawn at random by the
 * device that first needs them (12 of 32 letters, 60 bits) and mean nothing, so that they may stand
 * in the part of a fact that is never erased.
 */
const id = () => v.pipe(v.string(), v.regex(/^[a-z0-9]{3,32}$/));

export const personId = v.pipe(id(), v.brand('PersonId'));
export const staffId = v.pipe(id(), v.brand('StaffId'));
export const unitId = v.pipe(id(), v.brand('UnitId'));
export const roundId = v.pipe(id(), v.brand('RoundId'));
export const turnId = v.pipe(id(), v.brand('TurnId'));
export const testId = v.pipe(id(), v.brand('TestId'));
export const boxId = v.pipe(id(), v.brand('BoxId'));
/** A laboratory's report as it was taken in, drawn by the device that took it in. */
export const reportId = v.pipe(id(), v.brand('ReportId'));
export const deliveryId = v.pipe(id(), v.brand('DeliveryId'));
/** A fact's id: the base64url SHA-256 of its canonical text, 43 characters. */
export const factId = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{43}$/), v.brand('FactId'));

export type PersonId = v.InferOutput<typeof personId>;
export type StaffId = v.InferOutput<typeof staffId>;
export type UnitId = v.InferOutput<typeof unitId>;
export type RoundId = v.InferOutput<typeof roundId>;
export type TurnId = v.InferOutput<typeof turnId>;
export type TestId = v.InferOutput<typeof testId>;
export type BoxId = v.InferOutput<typeof boxId>;
export type DeliveryId = v.InferOutput<typeof deliveryId>;
export type ReportId = v.InferOutput<typeof reportId>;
export type FactId = v.InferOutput<typeof factId>;

/**
 * Who signs what no person wrote down: the service's own server, what another home of the group has said,
 * what came by a gateway for results. No members of staff, with no right to settle anything.
 */
export const SERVER = 'server' as StaffId;
export const GROUP = 'group' as StaffId;
export const GATEWAY = 'gateway' as StaffId;

/** Draws a fresh id; the caller of the core brings the chance. */
export type DrawId = () => string;

const LETTERS = '0123456789abcdefghjkmnpqrstvwxyz';

/** Turns 12 random bytes into an id; the three highest bits of each byte are dropped, so no bias. */
export const idFromBytes = (bytes: Uint8Array): string =>
  Array.from(bytes.subarray(0, 12), (byte) => LETTERS[byte & 31]).join('');
