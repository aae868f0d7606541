import { useState } from 'preact/hooks';
import type { Fact } from '../../care/catalogue.ts';
import type { Home } from '../../care/home.ts';
import type { Refusal } from '../../care/refusal.ts';
import { refuse } from '../../care/refusal.ts';
import type { Doing, Outcome } from '../../procedures/doing.ts';
import type { Acted } from '../desk/desk.ts';
import { useDesk } from '../desk/desk.ts';
import { sayRefusal } from '../desk/say-refusal.ts';
import type { FormProblem } from '../pieces/form/error-summary.tsx';
import type { Words } from '../words/en.ts';
import { useWords } from '../words/use-words.ts';

/** Where a problem leads that belongs to no field: the row with the button Keep. */
export const KEEP_ROW = 'keep';

export interface Keep {
  readonly problems: readonly FormProblem[];
  /** Grows with every try, so that the problems take the focus. */
  readonly attempt: number;
  /** Shows what is wrong with a page of a longer form; true if nothing is. Keeps nothing. */
  readonly fine: (wrong: readonly FormProblem[]) => boolean;
  readonly problemOf: (field: string) => string | undefined;
  /** Does it, unless something is wrong already; resolves to the facts kept, or undefined. */
  readonly keep: (
    wrong: readonly FormProblem[],
    decide: (home: Home, doing: Doing) => Outcome,
  ) => Promise<readonly Fact[] | undefined>;
}

/** Keeps what a form says, and puts whatever is wrong at its head. One try at a time. */
export function useKeep(): Keep {
  const desk = useDesk();
  const words = useWords();
  const [tried, setTried] = useState<{ problems: readonly FormProblem[]; attempt: number }>({
    problems: [],
    attempt: 0,
  });
  const [busy, setBusy] = useState(false);
  const show = (problems: readonly FormProblem[]): void =>
    setTried(({ attempt }) => ({ problems, attempt: attempt + 1 }));
  return {
    ...tried,
    fine: (wrong) => {
      show(wrong);
      return wrong.length === 0;
    },
    problemOf: (field) => tried.problems.find((problem) => problem.field === field)?.text,
    keep: async (wrong, decide) => {
      if (busy) return undefined;
      if (wrong.length > 0) {
        show(wrong);
        return undefined;
      }
      setBusy(true);
      const acted = await desk.act(something(decide)).finally(() => setBusy(false));
      show(acted.ok ? [] : [problemIn(acted, { words, home: desk.home })]);
      return acted.ok ? acted.facts : undefined;
    },
  };
}

/** A form that changes nothing is told so, rather than thanked. */
const something =
  (decide: (home: Home, doing: Doing) => Outcome) =>
  (home: Home, doing: Doing): Outcome => {
    const outcome = decide(home, doing);
    return outcome.ok && outcome.value.length === 0
      ? refuse({ reason: 'nothing-changed' })
      : outcome;
  };

function problemIn(
  acted: Extract<Acted, { ok: false }>,
  telling: { readonly words: Words; readonly home: Home },
): FormProblem {
  if (!('refusal' in acted)) {
    return { field: KEEP_ROW, text: telling.words.refusals.trouble[acted.trouble] };
  }
  return { field: fieldOf(acted.refusal), text: sayRefusal(acted.refusal, telling) };
}

function fieldOf(refusal: Refusal): string {
  if ('field' in refusal) return refusal.field;
  switch (refusal.reason) {
    case 'reason-missing':
      return 'reason';
    case 'lot-ends-otherwise':
    case 'kit-expired':
      return 'expires';
    default:
      return KEEP_ROW;
  }
}
