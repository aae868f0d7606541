/**
 * Every pair of colour tokens that meets on screen, and the contrast it must have: 4.5 to 1 for text
 * (WCAG 2.2, 1.4.3), 3 to 1 for what must be seen to be understood or used (1.4.11).
 */
export interface Pair {
  readonly on: string;
  readonly front: string;
  readonly atLeast: 3 | 4.5;
}

const grounds = ['paper', 'card', 'sunk'] as const;
const tints = ['bead-tint', 'hand-tint', 'knot-tint'] as const;

const text = (front: string, on: readonly string[]): readonly Pair[] =>
  on.map((ground) => ({ on: ground, front, atLeast: 4.5 }));
const shape = (front: string, on: readonly string[]): readonly Pair[] =>
  on.map((ground) => ({ on: ground, front, atLeast: 3 }));

export const pairs: readonly Pair[] = [
  ...text('ink', [...grounds, ...tints]),
  ...text('soft', [...grounds, ...tints]),
  ...text('bead', [...grounds, 'bead-tint']),
  ...text('hand', [...grounds, 'hand-tint']),
  ...text('knot', [...grounds, 'knot-tint']),
  ...text('on-action', ['action']),
  ...shape('edge', [...grounds, ...tints]),
  ...shape('wood', ['paper', 'card']),
  ...shape('action-edge', ['paper', 'card']),
  ...shape('picture-ink', ['picture-paper', 'picture-skin', 'picture-cloth']),
  ...shape('focus', [...grounds, ...tints]),
];
