import { isOpen } from '../custody/person-turns.ts';
import type { Test } from '../custody/test.ts';
import { testOf } from '../custody/test.ts';
import type { Turn } from '../custody/turn.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import type { Finding } from '../quality/finding.ts';
import { heldBy, isWithdrawn } from '../quality/held.ts';
import { roundHeldBy } from '../quality/held-round.ts';
import type { Box, Round } from './round.ts';

/** The count that has to come out: kits opened = tubes packed + kits spoiled. */
export interface Tally {
  readonly opened: readonly Test[];
  readonly packed: readonly Test[];
  readonly spoiled: readonly Test[];
  /** Sealed, and not yet scanned at the pack table. */
  readonly missing: readonly Test[];
  /** Opened and neither packed, spoiled nor sealed: still at the bedside. */
  readonly unfinished: readonly Test[];
  readonly openTurns: readonly Turn[];
  readonly held: readonly Finding[];
  readonly tallies: boolean;
}

export function tallyOf(home: Home, round: Round): Tally {
  const turns = round.turns.flatMap((id) => turnOf(home, id) ?? []);
  const opened = turns.flatMap((turn) => turn.tests).map((id) => testOf(home, id));
  const at = (stage: Test['stage']) => opened.filter((test) => test.stage === stage);
  const [packed, spoiled] = [at('packed'), at('spoiled')];
  // A tube that was withdrawn needs no box: a named person settled that it is not to be sent.
  const missing = at('sealed').filter((test) => !isWithdrawn(home, test.id));
  const withdrawn = at('sealed').filter((test) => isWithdrawn(home, test.id));
  const unfinished = opened.filter(
    (test) => ![packed, spoiled, missing, withdrawn].some((group) => group.includes(test)),
  );
  const openTurns = turns.filter(isOpen);
  const ofTests = opened.flatMap((test) => heldBy(home, test.id));
  const held = [...new Set([...ofTests, ...roundHeldBy(home, round.id)])];
  return {
    opened,
    packed,
    spoiled: [...spoiled, ...withdrawn],
    missing,
    unfinished,
    openTurns,
    held,
    tallies: missing.length + unfinished.length + openTurns.length + held.length === 0,
  };
}

/** Whether it comes out once this box is shut on what is in it. */
export const talliesOnceShut = (tally: Tally, box: Box | undefined): boolean =>
  tally.missing.length + tally.unfinished.length + tally.openTurns.length === 0 &&
  tally.held.every(({ kind, key }) => kind === 'box-changed' && key === box?.id);
