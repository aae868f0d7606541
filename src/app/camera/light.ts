/** How the picture is lit: `glare` where a shiny patch has gone white, `dark` where little is seen. */
export type Light = 'good' | 'glare' | 'dark';

/** A sample every so many pixels: enough to judge light; a prime, so that no pattern of bars hides. */
const EVERY = 13;
/** Mean brightness under this, of 255, is dark. Tried by hand, no source. */
const DARK = 45;
/** A patch counts as glare when so much of the picture is burnt out and the rest is not paper-white. */
const GLARE_SHARE = 0.04;
const GLARE_MOST = 0.35;

/** Tells the light from RGBA pixels. A white label is bright all over; glare is a patch in it. */
export function lightOf({ data, width }: Pick<ImageData, 'data' | 'width'>): Light {
  let [samples, sum, burnt] = [0, 0, 0];
  for (let i = 0; i < data.length; i += 4 * EVERY) {
    const level = brightness(data, i);
    samples += 1;
    sum += level;
    if (level >= 254) burnt += 1;
  }
  if (samples === 0 || width === 0) return 'good';
  if (sum / samples < DARK) return 'dark';
  const share = burnt / samples;
  return share > GLARE_SHARE && share < GLARE_MOST && sum / samples < 190 ? 'glare' : 'good';
}

/** Rec. 601 luma, as the JPEG and MPEG standards weigh red, green and blue. */
const brightness = (data: ArrayLike<number>, i: number): number =>
  0.299 * (data[i] ?? 0) + 0.587 * (data[i + 1] ?? 0) + 0.114 * (data[i + 2] ?? 0);
