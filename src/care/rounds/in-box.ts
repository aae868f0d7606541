import type { Test } from '../custody/test.ts';
import { testOf } from '../custody/test.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { BoxId, TestId } from '../ids.ts';
import type { Box, Round } from './round.ts';

/** The tubes that are in a box by what was scanned last, and not closed for ever since. */
export function inBox(home: Home, id: BoxId): Test[] {
  const ever = new Set(
    standing(factsIn(home, 'box', id), 'bag.packed').map(({ data }) => data.test),
  );
  return [...ever]
    .map((test) => testOf(home, test))
    .filter((test) => test.box === id && test.stage === 'packed');
}

export interface BoxChange {
  /** In the box, and not among those it was shut on. */
  readonly more: readonly Test[];
  /** It was shut on these, and they are not in it any more. */
  readonly gone: readonly TestId[];
}

/**
 * How a box differs from what it was shut on: another tablet has packed into it, or a bag was taken out.
 * One that has left the house cannot be opened: what was counted with the courier holds.
 */
export function changeIn(home: Home, { id, closed, handed }: Box): BoxChange | undefined {
  if (closed === undefined) return undefined;
  const now = inBox(home, id);
  const here = new Set(now.map((test) => test.id));
  const listed = new Set(closed.data.members);
  const more = now.filter((test) => !listed.has(test.id));
  const gone = closed.data.members.filter((test) => !here.has(test));
  if (more.length + gone.length === 0) return undefined;
  if (handed.length === 0) return { more, gone };
  return more.length === 0 || handed.at(-1)?.data.count === now.length ? undefined : { more, gone };
}

/** A box in the house that has to be shut anew. */
export const boxToShutAgain = (home: Home, round: Round): Box | undefined =>
  round.boxes.find((box) => box.handed.length === 0 && changeIn(home, box) !== undefined);
