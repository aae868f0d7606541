import type { Fact } from '../../care/catalogue.ts';
import type { Home } from '../../care/home.ts';
import type { Doing, Outcome } from '../../procedures/doing.ts';
import type { FormProblem } from '../pieces/form/error-summary.tsx';
import { useAnnounce } from '../pieces/page/live-region.tsx';
import { useWords } from '../words/use-words.ts';
import type { DraftOf } from './use-draft.ts';
import { useDraft } from './use-draft.ts';
import { useGoOn } from './use-go-on.ts';
import type { Keep } from './use-keep.ts';
import { useKeep } from './use-keep.ts';

/** What a field needs to show and change one value of the form. */
export interface Bound<Value> {
  readonly id: string;
  readonly value: Value;
  readonly problem: string | undefined;
  readonly onValue: (value: Value) => void;
}

export interface FormOf<Fields extends object> extends DraftOf<Fields> {
  readonly keep: Keep;
  readonly bind: <Id extends keyof Fields & string>(id: Id) => Bound<Fields[Id]>;
  /** Keeps it, forgets the draft, and goes on to `done`; resolves to the facts kept. */
  readonly submit: (
    wrong: readonly FormProblem[],
    decide: (home: Home, doing: Doing) => Outcome,
    done?: (facts: readonly Fact[]) => string,
  ) => Promise<void>;
}

/** A form on this page: what is typed, what is wrong with it, and keeping it. */
export function useForm<Fields extends object>(
  initial: Fields,
  { title, back }: { readonly title: string; readonly back: string },
): FormOf<Fields> {
  const draft = useDraft(initial, title);
  const keep = useKeep();
  const go = useGoOn();
  const announce = useAnnounce();
  const { keeping } = useWords();
  return {
    ...draft,
    keep,
    bind: (id) => ({
      id,
      value: draft.value[id],
      problem: keep.problemOf(id),
      onValue: (value) => draft.set({ [id]: value } as unknown as Partial<Fields>),
    }),
    submit: async (wrong, decide, done = () => back) => {
      const facts = await keep.keep(wrong, decide);
      if (facts === undefined) return;
      draft.drop();
      announce(keeping.kept);
      go(done(facts));
    },
  };
}
