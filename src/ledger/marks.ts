import { CHAIN_START } from './ids.ts';
import type { LedgerStore, Mark } from './store.ts';

/** Blocks of the browser's log; marks further back than one fall on block ends, which are cheap to read. */
export const BLOCK = 500;

/**
 * Positions a tablet names so that the server can find the newest they share: newest first, gaps
 * doubling, last 0. At most 2 + log2(head) of them.
 */
export function markPositions(head: number): readonly number[] {
  const positions: number[] = [];
  let gap = 1;
  for (let position = head; position > 0; position = stepBack(position, gap), gap *= 2)
    positions.push(position);
  return [...positions, 0];
}

function stepBack(position: number, gap: number): number {
  const back = position - gap;
  return gap < BLOCK ? back : Math.floor(back / BLOCK) * BLOCK;
}

export async function marksOf(store: LedgerStore, head: Mark): Promise<readonly Mark[]> {
  const marks: Mark[] = [head];
  for (const position of markPositions(head.position).slice(1)) {
    const chain = await store.chainAt(position);
    // Undefined when another tab has rewound in between: the compare at the end finds out.
    if (chain !== undefined) marks.push({ position, chain });
  }
  return head.position === 0 ? [head] : marks;
}

/** The highest mark this store has too. There always is one: nothing at all. */
export async function commonMark(store: LedgerStore, marks: readonly Mark[]): Promise<Mark> {
  for (const mark of [...marks].sort((a, b) => b.position - a.position))
    if ((await store.chainAt(mark.position)) === mark.chain) return mark;
  return { position: 0, chain: CHAIN_START };
}
