import type { Home } from '../home.ts';
import type { Test } from './test.ts';
import { testOf } from './test.ts';
import type { Turn } from './turn.ts';

/** What the recorder's tablet asks next. */
export type Step =
  | 'who'
  | 'willing'
  | 'kit'
  | 'check'
  | 'label-tube'
  | 'label-bag'
  | 'ready'
  | 'swab'
  | 'lid'
  | 'bag'
  | 'settled'
  | 'stopped'
  | 'interrupted'
  | 'ended';

/**
 * The step is computed, never stored: it follows from the turn and the kit in hand, so a tablet that
 * was dropped, killed or swapped opens where the last stored tap left it.
 */
export function stepOf(turn: Turn, test: Test | undefined): Step {
  if (turn.closed !== undefined) return 'ended';
  if (turn.interrupted !== undefined) return 'interrupted';
  const kit = kitStep(test);
  // Once the swab is out the person is left in peace; the tube still has to be made safe.
  if (test?.taken !== undefined) return kit;
  if (turn.stop !== undefined) return 'stopped';
  if (turn.needsWho) return 'who';
  if (turn.needsWilling) return 'willing';
  return kit;
}

function kitStep(test: Test | undefined): Step {
  switch (test?.stage) {
    case undefined:
    case 'spoiled':
      return 'kit';
    case 'opened':
      return 'check';
    case 'checked':
      return 'label-tube';
    case 'tube-labelled':
      return 'label-bag';
    case 'labelled':
      return 'ready';
    case 'begun':
      return 'swab';
    case 'taken':
      return 'lid';
    case 'closed':
      return 'bag';
    case 'sealed':
    case 'packed':
      return 'settled';
  }
}

export const testInHand = (home: Home, turn: Turn): Test | undefined =>
  turn.test === undefined ? undefined : testOf(home, turn.test);
