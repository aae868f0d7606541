/** A symbol as lines and areas in its own units, to be drawn at any size on paper or screen. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly paths: readonly {
    /** SVG path data: moves, lines and closes only. */
    readonly d: string;
    /** Width of the line; undefined for an area that is filled. */
    readonly stroke: number | undefined;
  }[];
}

/** Takes the paths out of the SVG that bwip-js writes. Throws on anything else, which is a bug. */
export function drawingOf(svg: string): Drawing {
  const box = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg);
  if (box === null) throw new Error('not the SVG of a symbol');
  const paths = [...svg.matchAll(/<path ([^>]*)>/g)].map(([, attributes = '']) => ({
    d: /\bd="([^"]*)"/.exec(attributes)?.[1] ?? '',
    stroke: numberIn(/stroke-width="([\d.]+)"/.exec(attributes)),
  }));
  return { width: Number(box[1]), height: Number(box[2]), paths };
}

const numberIn = (match: RegExpExecArray | null): number | undefined =>
  match === null ? undefined : Number(match[1]);
