import { inflateSync } from 'node:zlib';
import bwip from 'bwip-js/node';

/** A picture of light and dark, one byte a pixel. */
export interface Grey {
  readonly width: number;
  readonly height: number;
  readonly at: Uint8Array;
}

const blank = (width: number, height: number, level: number): Grey => ({
  ...{ width, height },
  at: new Uint8Array(width * height).fill(level),
});

/** Draws a symbol as bwip-js makes it, dark on white. */
export async function symbol(bcid: string, text: string, more: object = {}): Promise<Grey> {
  const png = await bwip.toBuffer({
    ...{ bcid, text, scale: 3, paddingwidth: 12, paddingheight: 12 },
    backgroundcolor: 'FFFFFF',
    ...more,
  });
  return readPng(png);
}

/** Reads the 8-bit grey, RGB or palette PNG files that bwip-js writes; anything else is a bug. */
function readPng(png: Buffer): Grey {
  let [width, height, depth, colour] = [0, 0, 0, 0];
  let palette: Buffer = Buffer.alloc(0);
  const data: Buffer[] = [];
  for (let at = 8; at < png.length; ) {
    const size = png.readUInt32BE(at);
    const kind = png.toString('latin1', at + 4, at + 8);
    const body = png.subarray(at + 8, at + 8 + size);
    if (kind === 'IHDR') {
      [width, height] = [body.readUInt32BE(0), body.readUInt32BE(4)];
      [depth, colour] = [body[8] ?? 0, body[9] ?? 0];
    }
    if (kind === 'PLTE') palette = body;
    if (kind === 'IDAT') data.push(body);
    at += 12 + size;
  }
  const channels = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 }[colour] ?? 0;
  const rows = unfilter(inflateSync(Buffer.concat(data)), {
    height,
    stride: Math.ceil((width * channels * depth) / 8),
    step: Math.max(1, (channels * depth) >> 3),
  });
  const out = blank(width, height, 255);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const bit = x * channels * depth;
      const byte = rows[y]?.[bit >> 3] ?? 0;
      const value = depth === 8 ? byte : (byte >> (8 - depth - (bit & 7))) & ((1 << depth) - 1);
      const level =
        colour === 3
          ? (palette[value * 3] ?? 0)
          : depth === 8
            ? value
            : value * (255 / ((1 << depth) - 1));
      out.at[y * width + x] = level;
    }
  }
  return out;
}

/** Undoes the five filters of PNG (RFC 2083, section 6). */
function unfilter(
  raw: Buffer,
  { height, stride, step }: { height: number; stride: number; step: number },
): Buffer[] {
  const rows: Buffer[] = [];
  for (let y = 0; y < height; y += 1) {
    const from = y * (stride + 1);
    const filter = raw[from];
    const row = Buffer.from(raw.subarray(from + 1, from + 1 + stride));
    const up = rows[y - 1];
    for (let i = 0; i < stride; i += 1) {
      const [a, b, c] = [row[i - step] ?? 0, up?.[i] ?? 0, up?.[i - step] ?? 0];
      const add = [0, a, b, (a + b) >> 1, paeth(a, b, c)][filter ?? 0] ?? 0;
      row[i] = ((row[i] ?? 0) + add) & 255;
    }
    rows.push(row);
  }
  return rows;
}

function paeth(a: number, b: number, c: number): number {
  const p = a + b - c;
  const [da, db, dc] = [Math.abs(p - a), Math.abs(p - b), Math.abs(p - c)];
  if (da <= db && da <= dc) return a;
  return db <= dc ? b : c;
}

/** Lays pictures on a grey table, side by side or one above another, in a 1280 × 720 frame. */
export function scene(pictures: readonly Grey[], level = 150): Grey {
  const table = blank(1280, 720, level);
  const rows = pictures.reduce((sum, each) => sum + each.height, 0) + 60 * (pictures.length - 1);
  let top = Math.round((720 - rows) / 2);
  for (const each of pictures) {
    const left = Math.round((1280 - each.width) / 2);
    for (let y = 0; y < each.height; y += 1) {
      table.at.set(each.at.subarray(y * each.width, (y + 1) * each.width), (top + y) * 1280 + left);
    }
    top += each.height + 60;
  }
  return table;
}

export const upsideDown = (grey: Grey): Grey => ({ ...grey, at: grey.at.slice().reverse() });

/** A label rubbed grey in its middle: its corners are found, what it says is lost. */
export function rubbed(grey: Grey): Grey {
  const worn = { ...grey, at: grey.at.slice() };
  const [from, to] = [0.36, 0.7];
  for (let y = Math.round(grey.height * from); y < grey.height * to; y += 1) {
    const row = y * grey.width;
    worn.at.fill(255, row + Math.round(grey.width * from), row + Math.round(grey.width * to));
  }
  return worn;
}

/** A film in YUV4MPEG2, which Chromium's fake camera plays over and over. */
export function y4m(frames: readonly Grey[]): Buffer {
  const [first] = frames;
  if (first === undefined) throw new Error('a film needs a picture');
  const { width, height } = first;
  const grey = Buffer.alloc((width * height) / 2, 128);
  const head = Buffer.from(
    `YUV4MPEG2 W${String(width)} H${String(height)} F10:1 Ip A1:1 C420jpeg\n`,
  );
  return Buffer.concat([
    head,
    ...frames.flatMap((frame) => [Buffer.from('FRAME\n'), Buffer.from(frame.at), grey]),
  ]);
}
