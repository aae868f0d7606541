import { useRef, useState } from 'preact/hooks';
import type { TurnId } from '../../../care/ids.ts';
import type { Doing } from '../../../procedures/doing.ts';
import { decideTouch } from '../../../procedures/take-swab/decide.ts';
import type { Touch } from '../../../procedures/take-swab/touch.ts';
import { useDesk } from '../../desk/desk.ts';
import type { Act } from '../../desk/use-act.ts';
import { useAct } from '../../desk/use-act.ts';

export interface TurnAct extends Omit<Act, 'act'> {
  readonly touch: (given: Touch, turn?: TurnId) => Promise<boolean>;
  /** Other homes are being asked about a code: a second and a half at most. */
  readonly asking: boolean;
}

/** Touches of one turn. Each is stored before the screen moves; a refusal stays in view. */
export function useTurn(): TurnAct {
  const desk = useDesk();
  const { act, ...rest } = useAct();
  const [asking, setAsking] = useState(false);
  const latest = useRef(0);

  /** What is known of a code elsewhere before a kit is opened. Nothing else ever waits for a network. */
  async function known(given: Touch): Promise<Pick<Doing, 'usedElsewhere'>> {
    if (given.do !== 'open-kit') return {};
    setAsking(true);
    const asked = given.code.trim();
    const homes = await desk.usedElsewhere(asked).finally(() => setAsking(false));
    return homes === undefined
      ? {}
      : { usedElsewhere: (code) => (code === asked ? homes : undefined) };
  }

  return {
    ...rest,
    asking,
    touch: async (given, turn) => {
      latest.current += 1;
      const mine = latest.current;
      const also = await known(given);
      // Stop, or another scan, was touched meanwhile: it counts, and this one is as if never made.
      if (given.do === 'open-kit' && mine !== latest.current) return false;
      const kept = await act((home, doing) =>
        decideTouch(home, turn === undefined ? given : { ...given, turn }, { ...doing, ...also }),
      );
      return kept !== undefined;
    },
  };
}
