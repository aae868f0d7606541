import type { JsonObject } from './canonical.ts';
import type { FormReason } from './form-reasons.ts';
import { type DeviceId, type FactId, isFactId, isServerDevice } from './ids.ts';

/** The one kind the ledger itself understands: `{targets: [ids], reason}`, by a server only. */
export const ERASED = 'erased';
export const ERASED_VERSION = 1;
/** Keeps the body well under its limit: 200 ids are 9.2 kB. */
export const MAX_TARGETS = 200;

/** What is wrong with an erasure's form, if this body is one. */
export function erasureFault(body: JsonObject): readonly [FormReason, string] | undefined {
  if (body['kind'] !== ERASED) return undefined;
  const device = body['device'] as DeviceId;
  if (!isServerDevice(device)) return ['erasure-not-by-server', device];
  const { targets, reason } = body['data'] as JsonObject;
  if (!Array.isArray(targets) || targets.length === 0 || targets.length > MAX_TARGETS)
    return ['bad-erasure', `targets: 1 to ${MAX_TARGETS} ids`];
  if (!targets.every(isFactId)) return ['bad-erasure', 'targets: not an id'];
  if (typeof reason !== 'string' || reason === '') return ['bad-erasure', 'reason'];
  return undefined;
}

/** The ids a body erases: none unless it is an erasure. */
export function targetsOf(body: {
  readonly kind: string;
  readonly data: JsonObject;
}): readonly FactId[] {
  return body.kind === ERASED ? (body.data['targets'] as unknown as readonly FactId[]) : [];
}
