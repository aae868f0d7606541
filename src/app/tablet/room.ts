import type { Door } from './door/door.ts';
import type { Storage } from './state.ts';
import type { TabletWorld } from './world.ts';

const MIB = 1024 * 1024;
/** Put aside so that the act in hand can still be kept when the disk is full. */
const BALLAST_PIECES = 5;
/** A round writes about a megabyte; under this no new kit is opened. */
const LOW_BYTES = 50 * MIB;

/** Room on the tablet: asked for, watched, and a little put by for the moment it runs out. */
export class Room {
  private ballast = false;

  constructor(
    private readonly door: Door,
    private readonly world: TabletWorld,
  ) {}

  /** Asks the browser to keep what rests here, and puts ballast by. */
  async prepare(): Promise<Storage> {
    const promised = await promise();
    await this.fillBallast();
    return { ...(await this.look()), promised };
  }

  async look(): Promise<Storage> {
    const free = await freeBytes();
    const room = !this.ballast || (free !== undefined && free < LOW_BYTES) ? 'low' : 'enough';
    return { promised: await isPromised(), room, free };
  }

  /** The disk is full: gives up the ballast. False when there was none left to give. */
  async makeRoom(): Promise<boolean> {
    if (!this.ballast) return false;
    this.ballast = false;
    await this.door.dropBallast();
    return true;
  }

  /** Piece by piece, of bytes that cannot be squeezed; a disk without room for it stays `low`. */
  private async fillBallast(): Promise<void> {
    try {
      for (let piece = await this.door.ballastPieces(); piece < BALLAST_PIECES; piece++)
        await this.door.putBallast(piece, this.megabyte());
      this.ballast = true;
    } catch (error) {
      if (!(error instanceof DOMException) || error.name !== 'QuotaExceededError') throw error;
      this.ballast = false;
      await this.door.dropBallast();
    }
  }

  private megabyte(): Uint8Array<ArrayBuffer> {
    const bytes = new Uint8Array(MIB);
    // getRandomValues gives at most 64 KiB at a time (Web Cryptography API).
    for (let from = 0; from < MIB; from += 65_536) bytes.set(this.world.random(65_536), from);
    return bytes;
  }
}

async function promise(): Promise<boolean | undefined> {
  try {
    return await navigator.storage.persist();
  } catch {
    return undefined;
  }
}

async function isPromised(): Promise<boolean | undefined> {
  try {
    return await navigator.storage.persisted();
  } catch {
    return undefined;
  }
}

async function freeBytes(): Promise<number | undefined> {
  try {
    const { quota, usage } = await navigator.storage.estimate();
    return quota === undefined || usage === undefined ? undefined : Math.max(0, quota - usage);
  } catch {
    return undefined;
  }
}
