/** A face is kept inside a fact, so it is small: at most 40 kB of JPEG. */
const MAX_PHOTO_BYTES = 40_000;

/** Square, in pixels: large enough to know a face by, from the largest that fits. */
const SIDES = [480, 400, 320, 240, 160] as const;
const QUALITIES = [0.85, 0.7, 0.55] as const;

/** Bytes that a base64 data URL holds. */
const bytesOf = (url: string): number => Math.floor(((url.length - url.indexOf(',') - 1) * 3) / 4);

/**
 * The middle square of a picture as a small JPEG data URL; undefined where the file is no picture. It is
 * drawn afresh, so what a camera adds to a file (place, time, device) does not come along.
 */
export async function smallPhoto(file: Blob): Promise<string | undefined> {
  const picture = await createImageBitmap(file).catch(() => undefined);
  if (picture === undefined) return undefined;
  try {
    for (const side of SIDES) {
      const canvas = squareOf(picture, side);
      for (const quality of QUALITIES) {
        const url = canvas.toDataURL('image/jpeg', quality);
        if (url.startsWith('data:image/jpeg') && bytesOf(url) <= MAX_PHOTO_BYTES) return url;
      }
    }
    return undefined;
  } finally {
    picture.close();
  }
}

function squareOf(picture: ImageBitmap, side: number): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = side;
  canvas.height = side;
  const from = Math.min(picture.width, picture.height);
  const [x, y] = [(picture.width - from) / 2, (picture.height - from) / 2];
  canvas.getContext('2d')?.drawImage(picture, x, y, from, from, 0, 0, side, side);
  return canvas;
}
