import type { JsonObject } from './canonical.ts';
import type { Erasure, ErasureSeal } from './erasure-seal.ts';
import type { Body } from './fact.ts';
import type { FormReason } from './form-reasons.ts';
import type { Hash } from './hash.ts';
import { type DeviceId, type FactId, isFactId, isServerDevice } from './ids.ts';

/** The one kind the ledger itself understands: `{targets: [ids], reason, seal?}`, by a server only. */
export const ERASED = 'erased';
export const ERASED_VERSION = 1;
/** Keeps the body well under its limit: 200 ids are 9.2 kB. */
export const MAX_TARGETS = 200;

/** What is wrong with an erasure's form, if this body is one. */
export function erasureFault(body: JsonObject): readonly [FormReason, string] | undefined {
  if (body['kind'] !== ERASED) return undefined;
  const device = body['device'] as DeviceId;
  if (!isServerDevice(device)) return ['erasure-not-by-server', device];
  const { targets, reason, seal } = body['data'] as JsonObject;
  if (!Array.isArray(targets) || targets.length === 0 || targets.length > MAX_TARGETS)
    return ['bad-erasure', `targets: 1 to ${MAX_TARGETS} ids`];
  if (!targets.every(isFactId)) return ['bad-erasure', 'targets: not an id'];
  if (typeof reason !== 'string' || reason === '') return ['bad-erasure', 'reason'];
  if (seal !== undefined && typeof seal !== 'string') return ['bad-erasure', 'seal'];
  return undefined;
}

/** The ids a body erases: none unless it is an erasure. */
export function targetsOf(body: {
  readonly kind: string;
  readonly data: JsonObject;
}): readonly FactId[] {
  return body.kind === ERASED ? (body.data['targets'] as unknown as readonly FactId[]) : [];
}

/** Whether an erasure bears the server's seal. Hashes are compared, so that no time taken tells a byte. */
export function sealedBy(seal: ErasureSeal, { data }: Body, hash: Hash): boolean {
  const { targets, reason, seal: borne } = data as Readonly<Record<string, unknown>>;
  if (typeof borne !== 'string') return false;
  return hash(borne) === hash(seal.of({ targets, reason } as Erasure));
}
