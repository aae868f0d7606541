import { count, firstRefusal } from '../refusal/checks.ts';
import { given, type Outcome, type Refusal, refuse } from '../refusal/refusal.ts';

export type Pair = readonly [number, number];

/**
 * All ways to make so many disjoint pairs out of members 0 to n - 1, each pair allowed. Within a
 * pairing, pairs stand in rising order. None asked for: one empty pairing.
 */
export function enumeratePairings(
  members: number,
  pairs: number,
  allowed: (a: number, b: number) => boolean,
): Outcome<readonly (readonly Pair[])[]> {
  const refused: Refusal | undefined = firstRefusal(
    count('members', members),
    count('pairs', pairs),
  );
  if (refused) return refused;
  if (members > 16) return refuse('too-large', 'Pairings are listed for up to 16 members.');
  const found: (readonly Pair[])[] = [];
  const extend = (chosen: readonly Pair[], from: number): void => {
    if (chosen.length === pairs) {
      found.push(chosen);
      return;
    }
    const busy = new Set(chosen.flat());
    for (let a = from; a < members; a++) {
      if (busy.has(a)) continue;
      for (let b = a + 1; b < members; b++) {
        if (!busy.has(b) && allowed(a, b)) extend([...chosen, [a, b]], a + 1);
      }
    }
  };
  extend([], 0);
  return given(found);
}
