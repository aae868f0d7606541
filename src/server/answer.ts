import type { Turned, TurnedReason } from '../procedures/access/wire.ts';

/** What a handler answers: a value, or why the call is turned away. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly turned: Turned };

export const give = <T>(value: T): Answer<T> => ({ ok: true, value });
export const turn = (turned: Turned): { readonly ok: false; readonly turned: Turned } => ({
  ok: false,
  turned,
});

/** The HTTP status of each reason (RFC 9110; 429 from RFC 6585, 507 from RFC 4918). */
export const STATUS: Readonly<Record<TurnedReason, number>> = {
  wrong: 401,
  wait: 429,
  'pin-must-change': 403,
  'pin-refused': 422,
  'not-signed-in': 401,
  'needs-manager': 403,
  'device-unknown': 401,
  'device-retired': 403,
  'tablet-key-gone': 409,
  'other-page': 403,
  'other-host': 421,
  'bad-request': 400,
  'not-found': 404,
  'too-large': 413,
  'too-many-calls': 429,
  storage: 507,
  fault: 500,
};
