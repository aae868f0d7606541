import { code128 } from 'bwip-js/generic';

/** A Code 128 symbol (ISO/IEC 15417) as its dark bars, in modules from the left edge of the first. */
export interface Bars {
  /** Modules from the first bar to the last, without the quiet zones. */
  readonly modules: number;
  readonly bars: readonly { readonly at: number; readonly wide: number }[];
}

/** Modules of clear ground that the standard asks for on either side. */
export const QUIET = 10;

/** The bars of a text in ASCII. Throws on an empty text or a sign that Code 128 has not. */
export function code128Bars(text: string): Bars {
  const bars: { at: number; wide: number }[] = [];
  let modules = 0;
  code128(
    { bcid: 'code128', text, scale: 1, height: 10, includetext: false },
    {
      ...noInk,
      init: (width) => {
        modules = width;
      },
      // The middle of a bar, rounded up where its width is odd.
      line: (...[x, , , , wide]) => {
        bars.push({ at: x - Math.ceil(wide / 2), wide });
      },
      end: () => true,
    },
  );
  return { modules, bars };
}

const none = (): void => undefined;
/** Of a linear symbol without text only lines are drawn. */
const noInk = {
  scale: () => null,
  measure: () => ({ width: 0, ascent: 0, descent: 0 }),
  polygon: none,
  hexagon: none,
  ellipse: none,
  fill: none,
  text: none,
};
