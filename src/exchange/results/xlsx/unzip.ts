import { Unzip, UnzipInflate } from 'fflate';
import type { FileProblem } from '../reported.ts';
import { unread } from '../reported.ts';

export interface ZipLimits {
  /** Bytes that all parts may unpack to. */
  readonly mostBytes: number;
  /** How many times its packed size a part may unpack to. */
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
  | { readonly ok: true; readonly parts: ReadonlyMap<string, Uint8Array> }
  | ({ readonly ok: false } & FileProblem);

/** Small parts pack well by nature: a ratio is looked at only from here on. */
const RATIO_FROM = 1024 * 1024;
/** Packed bytes a step: deflate makes at most 1,032 of one, so a step is in memory as 8 MiB at most. */
const STEP = 8 * 1024;

class Stop extends Error {
  constructor(
    readonly problem: FileProblem['problem'],
    detail: string,
  ) {
    super(detail);
  }
}

/**
 * The parts of a zip that `wanted` asks for, unpacked piece by piece: what goes over a limit stops
 * before it is in memory. Sizes that the archive claims are not believed.
 */
export function unzip(
  bytes: Uint8Array,
  wanted: (name: string) => boolean,
  limits: ZipLimits = usualLimits,
): Unzipped {
  const parts = new Map<string, Uint8Array>();
  let total = 0;
  let seen = 0;
  // The library hands an error thrown in here back in here: the first is the one that counts.
  let stopped: Stop | undefined;
  const stop = (problem: FileProblem['problem'], detail: string): never => {
    stopped ??= new Stop(problem, detail);
    throw stopped;
  };
  const open = new Set<string>();
  const archive = new Unzip((part) => {
    seen += 1;
    if (seen > limits.mostParts) stop('unsafe', 'The workbook has too many parts.');
    if (!wanted(part.name)) return;
    if (parts.has(part.name)) stop('unsafe', `Two parts are called ${part.name.slice(0, 60)}.`);
    const pieces: Uint8Array[] = [];
    let size = 0;
    parts.set(part.name, new Uint8Array());
    part.ondata = (error, piece, final) => {
      if (error !== null) stop('truncated', 'The workbook is cut off or damaged.');
      size += piece.length;
      total += piece.length;
      if (total > limits.mostBytes || (size > RATIO_FROM && size > bytes.length * limits.mostRatio))
        stop('unsafe', 'The workbook unpacks to far more than it should.');
      pieces.push(piece);
      if (final) parts.set(part.name, joined(pieces, size));
      if (final) open.delete(part.name);
    };
    open.add(part.name);
    part.start();
  });
  archive.register(UnzipInflate);
  try {
    for (let at = 0; at < bytes.length; at += STEP) {
      const end = Math.min(bytes.length, at + STEP);
      archive.push(bytes.subarray(at, end), end === bytes.length);
    }
  } catch {
    if (stopped !== undefined) return unread(stopped.problem, stopped.message);
    return unread('truncated', 'The workbook is cut off or damaged.');
  }
  if (open.size > 0 || !endsWell(bytes)) return unread('truncated', 'The workbook is cut off.');
  return { ok: true, parts };
}

/** The end-of-central-directory mark stands within the last 64 KiB of a whole zip. */
function endsWell(bytes: Uint8Array): boolean {
  for (let at = bytes.length - 22; at >= 0 && at > bytes.length - 65_558; at -= 1) {
    if (bytes[at] === 0x50 && bytes[at + 1] === 0x4b && bytes[at + 2] === 5 && bytes[at + 3] === 6)
      return true;
  }
  return false;
}

function joined(pieces: readonly Uint8Array[], size: number): Uint8Array {
  const all = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
