/** The few colours of a picture; whoever draws it says what each looks like on its ground. */
export type Tint = 'ink' | 'paper' | 'skin' | 'hair' | 'cloth' | 'calm' | 'warm' | 'stop';

/** One shape of a picture: a path in a square of 100 by 100, filled, drawn, or both. */
export interface Shape {
  readonly d: string;
  readonly fill?: Tint;
  readonly line?: Tint;
  /** Thickness of the line in the same units. */
  readonly wide?: number;
}
export type Picture = readonly Shape[];

/** A circle as a path, so that SVG and PDF take the same data. */
export const disc = (x: number, y: number, r: number): string =>
  `M${x - r} ${y} a${r} ${r} 0 1 0 ${2 * r} 0 a${r} ${r} 0 1 0 ${-2 * r} 0 z`;

/** A rectangle with round corners: where its left top corner is, how large it is, how round. */
export const box = (
  ...[x, y, w, h, r = 0]: readonly [number, number, number, number, number?]
): string =>
  `M${x + r} ${y} h${w - 2 * r} a${r} ${r} 0 0 1 ${r} ${r} v${h - 2 * r} a${r} ${r} 0 0 1 ${-r} ${r} ` +
  `h${2 * r - w} a${r} ${r} 0 0 1 ${-r} ${-r} v${2 * r - h} a${r} ${r} 0 0 1 ${r} ${-r} z`;
