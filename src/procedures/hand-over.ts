import type { Home } from '../care/home.ts';
import type { BoxId, RoundId } from '../care/ids.ts';
import { allow, refuse } from '../care/refusal.ts';
import { inBox } from '../care/rounds/in-box.ts';
import { roundOf } from '../care/rounds/round.ts';
import type { Outcome } from './doing.ts';

export interface HandOver {
  readonly round: RoundId;
  readonly box: BoxId;
  readonly courier: string;
  /** Bags counted aloud with the courier, 2 m apart. */
  readonly count: number;
  readonly seal: string;
}

/** The box leaves the house: to whom, how many, under which seal. The count must be what is in it. */
export function handOver(home: Home, hand: HandOver): Outcome {
  const round = roundOf(home, hand.round);
  const box = round?.boxes.find((each) => each.id === hand.box);
  if (box?.closed === undefined) return refuse({ reason: 'box-not-closed' });
  if (hand.courier.trim() === '') return refuse({ reason: 'empty', field: 'courier' });
  if (hand.seal.trim() === '') return refuse({ reason: 'empty', field: 'seal' });
  if (hand.seal.trim().length > 60) return refuse({ reason: 'too-long', field: 'seal', most: 60 });
  const packed = inBox(home, box.id).length;
  if (hand.count !== packed)
    return refuse({ reason: 'count-differs', counted: hand.count, packed });
  return allow([
    {
      kind: 'box.handed',
      data: { box: hand.box, round: hand.round, count: hand.count, seal: hand.seal.trim() },
      private: { courier: hand.courier.trim() },
    },
  ]);
}
