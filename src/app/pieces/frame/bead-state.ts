/** The five states of a bead: not yet, now, settled, not needed, needs somebody. */
export type BeadState = 'todo' | 'hand' | 'done' | 'unneeded' | 'look';

export const beadStates: readonly BeadState[] = ['todo', 'hand', 'done', 'unneeded', 'look'];
