import type { TurnId } from '../../../care/ids.ts';
import { decideTouch } from '../../../procedures/take-swab/decide.ts';
import type { Touch } from '../../../procedures/take-swab/touch.ts';
import type { Act } from '../../desk/use-act.ts';
import { useAct } from '../../desk/use-act.ts';

export interface TurnAct extends Omit<Act, 'act'> {
  readonly touch: (given: Touch, turn?: TurnId) => Promise<boolean>;
}

/** Touches of one turn. Each is stored before the screen moves; a refusal stays in view. */
export function useTurn(): TurnAct {
  const { act, ...rest } = useAct();
  return {
    ...rest,
    touch: async (given, turn) => {
      const kept = await act((home, doing) =>
        decideTouch(home, turn === undefined ? given : { ...given, turn }, doing),
      );
      return kept !== undefined;
    },
  };
}
