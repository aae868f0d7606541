import { Unzip, type UnzipDecoder, type UnzipDecoderConstructor, UnzipInflate } from 'fflate';
import type { FileProblem } from '../reported.ts';
import { unread } from '../reported.ts';
import { Refused } from './refused.ts';

export interface ZipLimits {
  /** Bytes that all parts may unpack to. */
  readonly mostBytes: number;
  /** How many times its own packed size a part may unpack to. */
  readonly mostRatio: number;
  readonly mostParts: number;
}

/** A workbook of ordinary lists packs 5 to 20 times; a bomb packs 1,000 times (deflate's own limit is 1,032). */
export const usualLimits: ZipLimits = {
  mostBytes: 256 * 1024 * 1024,
  mostRatio: 200,
  mostParts: 2000,
};

export type Unzipped =
  | {
      readonly ok: true;
      /** What was to be kept. */
      readonly parts: ReadonlyMap<string, Uint8Array>;
      /** All that was looked at, kept or not. */
      readonly names: ReadonlySet<string>;
    }
  | ({ readonly ok: false } & FileProblem);

/** Small parts pack well by nature: a ratio is looked at only from here on. */
const RATIO_FROM = 1024 * 1024;
/** Packed bytes a step: deflate makes at most 1,032 of one, so a step is in memory as 8 MiB at most. */
const STEP = 8 * 1024;

/**
 * Looks through the parts of a zip, piece by piece: what goes over a limit stops before it is in memory.
 * `keep` says of each part whether its bytes are kept; undefined: it is not unpacked at all.
 */
export function unzip(
  bytes: Uint8Array,
  keep: (name: string) => boolean | undefined,
  limits: ZipLimits = usualLimits,
): Unzipped {
  const kept = new Map<string, Uint8Array[]>();
  const names = new Set<string>();
  const wanted = (name: string) => {
    const keeping = keep(name);
    if (keeping !== undefined) names.add(name);
    if (keeping === true) kept.set(name, []);
    return keeping !== undefined;
  };
  try {
    for (const { part, piece } of unpacked(bytes, wanted, limits)) kept.get(part)?.push(piece);
  } catch (error) {
    if (error instanceof Refused) return unread(error.problem, error.message);
    return unread('truncated', 'The workbook is cut off or damaged.');
  }
  if (!endsWell(bytes)) return unread('truncated', 'The workbook is cut off.');
  return { ok: true, names, parts: new Map(Array.from(kept, ([n, all]) => [n, joined(all)])) };
}

/** One part of a zip that `unzip` has been through, piece by piece, so that it is never whole in memory. */
export function* piecesOf(
  bytes: Uint8Array,
  name: string,
  limits: ZipLimits = usualLimits,
): Generator<Uint8Array> {
  for (const { piece } of unpacked(bytes, (each) => each === name, limits)) yield piece;
}

interface Piece {
  readonly part: string;
  readonly piece: Uint8Array;
}

/** Sizes that the archive claims are not believed: packed bytes are counted as they go in. */
function* unpacked(
  bytes: Uint8Array,
  wanted: (name: string) => boolean,
  limits: ZipLimits,
): Generator<Piece> {
  const packed = new Map<string, number>();
  const open = new Set<string>();
  let ready: Piece[] = [];
  let total = 0;
  let seen = 0;
  // The library hands an error thrown in here back in here: the first is the one that counts.
  let stopped: Refused | undefined;
  const stop = (problem: FileProblem['problem'], detail: string): never => {
    stopped ??= new Refused(problem, detail);
    throw stopped;
  };
  const archive = new Unzip((part) => {
    const { name } = part;
    seen += 1;
    if (seen > limits.mostParts) stop('unsafe', 'The workbook has too many parts.');
    if (!wanted(name)) return;
    if (packed.has(name)) stop('unsafe', `Two parts are called ${name.slice(0, 60)}.`);
    packed.set(name, 0);
    open.add(name);
    let size = 0;
    part.ondata = (error, piece, final) => {
      if (error !== null) stop('truncated', 'The workbook is cut off or damaged.');
      size += piece.length;
      total += piece.length;
      // What is stored as it is does not go through the decoder that counts.
      if (part.compression === 0) packed.set(name, size);
      const most = (packed.get(name) ?? 0) * limits.mostRatio;
      if (total > limits.mostBytes || (size > RATIO_FROM && size > most))
        stop('unsafe', 'The workbook unpacks to far more than it should.');
      ready.push({ part: name, piece });
      if (final) open.delete(name);
    };
    part.start();
  });
  archive.register(counting(packed));
  for (let at = 0; at < bytes.length; at += STEP) {
    const end = Math.min(bytes.length, at + STEP);
    try {
      archive.push(bytes.subarray(at, end), end === bytes.length);
    } catch {
      throw stopped ?? new Refused('truncated', 'The workbook is cut off or damaged.');
    }
    yield* ready;
    ready = [];
  }
  if (open.size > 0) throw new Refused('truncated', 'The workbook is cut off.');
}

/** The library's own decoder, with an eye on how many packed bytes go into it. */
const counting = (packed: Map<string, number>): UnzipDecoderConstructor =>
  class extends UnzipInflate implements UnzipDecoder {
    static override readonly compression = 8;
    constructor(private readonly part: string) {
      super();
    }
    override push(chunk: Uint8Array, final: boolean): void {
      packed.set(this.part, (packed.get(this.part) ?? 0) + chunk.length);
      super.push(chunk, final);
    }
  };

/** The end-of-central-directory mark stands within the last 64 KiB of a whole zip. */
function endsWell(bytes: Uint8Array): boolean {
  for (let at = bytes.length - 22; at >= 0 && at > bytes.length - 65_558; at -= 1) {
    if (bytes[at] === 0x50 && bytes[at + 1] === 0x4b && bytes[at + 2] === 5 && bytes[at + 3] === 6)
      return true;
  }
  return false;
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((size, { length }) => size + length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
