import type { StaffId } from '../../../care/ids.ts';
import type { TabletWorld } from '../world.ts';

/** How dear one guess at a PIN is. Memory in KiB; passes. */
export interface WrapCost {
  readonly memory: number;
  readonly time: number;
}

/**
 * RFC 9106 section 4, second recommended setting (64 MiB, three passes) in one lane instead of four.
 * 0.3 s on a desk, two on a slow tablet.
 */
const WRAP_COST: WrapCost = { memory: 64 * 1024, time: 3 };
const SALT_BYTES = 16;
const KEY_BYTES = 32;

/** A tablet's key as one person's PIN gives it out. */
export interface Wrap extends WrapCost {
  readonly staff: StaffId;
  /** For the sign-in screen; a wrap is the only reason to keep it in clear. */
  readonly called: string;
  readonly salt: Uint8Array<ArrayBuffer>;
  readonly sealed: Uint8Array<ArrayBuffer>;
  /** The device's own clock when it was made, ms since 1970. */
  readonly made: number;
}

export interface WrapFor {
  readonly staff: StaffId;
  readonly called: string;
  readonly pin: string;
  /** Whose boxes these are; the same for as long as what rests here is readable. */
  readonly owner: string;
  readonly cost?: WrapCost;
}

const place = (staff: StaffId): string => `wrap/${staff}`;

/** Wraps a tablet's key: AES-GCM under Argon2id of the PIN. */
export async function wrapKey(
  world: TabletWorld,
  key: Uint8Array<ArrayBuffer>,
  { staff, called, pin, owner, cost = WRAP_COST }: WrapFor,
): Promise<Wrap> {
  const salt = world.random(SALT_BYTES);
  const { memory, time } = cost;
  const cipher = await world.cipher(await keyOfPin(pin, { salt, memory, time }), owner);
  const sealed = await cipher.seal(key, place(staff));
  return { staff, called, salt, memory, time, sealed, made: world.now() };
}

/** The tablet's key, or undefined: unwrapping is the one check of a PIN there is. */
export async function unwrapKey(
  world: TabletWorld,
  wrap: Wrap,
  from: { readonly pin: string; readonly owner: string },
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const cipher = await world.cipher(await keyOfPin(from.pin, wrap), from.owner);
  try {
    return await cipher.open(wrap.sealed, place(wrap.staff));
  } catch {
    return undefined;
  }
}

async function keyOfPin(
  pin: string,
  { salt, memory, time }: Pick<Wrap, 'salt' | 'memory' | 'time'>,
): Promise<Uint8Array<ArrayBuffer>> {
  // Not before somebody signs in: the first screen does not wait for it.
  const { argon2id } = await import('hash-wasm');
  const hash = await argon2id({
    password: pin,
    salt,
    iterations: time,
    memorySize: memory,
    parallelism: 1,
    hashLength: KEY_BYTES,
    outputType: 'binary',
  });
  return new Uint8Array(hash);
}
