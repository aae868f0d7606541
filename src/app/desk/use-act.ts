import { useState } from 'preact/hooks';
import type { Fact } from '../../care/catalogue.ts';
import type { Home } from '../../care/home.ts';
import type { Refusal } from '../../care/refusal.ts';
import type { Doing, Outcome } from '../../procedures/doing.ts';
import { useWords } from '../words/use-words.ts';
import { useDesk } from './desk.ts';
import { sayRefusal } from './say-refusal.ts';

export interface Act {
  /** Does it; resolves to the facts kept, or undefined when it was turned away. */
  readonly act: (
    decide: (home: Home, doing: Doing) => Outcome,
  ) => Promise<readonly Fact[] | undefined>;
  /** What was wrong with the last try, in words for staff; gone with the next one that is kept. */
  readonly problem: string | undefined;
  /** The same as the core told it, for screens that offer a way on. */
  readonly refusal: Refusal | undefined;
  readonly clear: () => void;
  readonly busy: boolean;
}

/** Does things at the desk and keeps the words for what was turned away. */
export function useAct(): Act {
  const desk = useDesk();
  const words = useWords();
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const [refusal, setRefusal] = useState<Refusal | undefined>(undefined);
  const [busy, setBusy] = useState(false);
  return {
    problem,
    refusal,
    busy,
    clear: () => {
      setProblem(undefined);
      setRefusal(undefined);
    },
    act: async (decide) => {
      setBusy(true);
      const acted = await desk.act(decide).finally(() => setBusy(false));
      setRefusal('refusal' in acted ? acted.refusal : undefined);
      if (acted.ok) {
        setProblem(undefined);
        return acted.facts;
      }
      setProblem(
        'refusal' in acted
          ? sayRefusal(acted.refusal, { words, home: desk.home })
          : words.refusals.trouble[acted.trouble],
      );
      return undefined;
    },
  };
}
