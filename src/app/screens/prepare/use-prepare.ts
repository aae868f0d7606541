import type { RoundId } from '../../../care/ids.ts';
import type { Place } from '../../../care/rounds/first-order.ts';
import type { Round } from '../../../care/rounds/round.ts';
import type { Desk } from '../../desk/desk.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { useDraft } from '../../keeping/use-draft.ts';
import { useAllWords } from '../../words/use-all-words.ts';
import type { Candidate } from './candidates.ts';
import { candidatesFor } from './candidates.ts';
import type { Draft } from './draft.ts';
import { draftOf, newDraft } from './draft.ts';
import { listed } from './listed.ts';

/** The draft of a round and all that follows from it, as every step reads it. */
export interface Prepare {
  readonly desk: Desk;
  readonly draft: Draft;
  readonly set: (change: Partial<Draft>) => void;
  readonly drop: () => void;
  readonly candidates: readonly Candidate[];
  /** Who is on the list, in order. */
  readonly places: readonly Place[];
  readonly round: RoundId | undefined;
}

export function usePrepare(round: Round | undefined): Prepare {
  const desk = useDesk();
  const { prepare } = useAllWords();
  const { home, me } = desk;
  const begin =
    round === undefined ? newDraft(home, { day: todayOf(desk), me }) : draftOf(home, round);
  const title = round === undefined ? prepare.title : prepare.change;
  const { value: draft, set, drop } = useDraft<Draft>(begin, title);
  const candidates = candidatesFor(home, { ...draft, now: desk.now() });
  const places = listed(home, draft, candidates);
  return { desk, draft, set, drop, candidates, places, round: round?.id };
}
