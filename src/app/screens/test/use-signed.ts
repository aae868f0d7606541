import type { Fact } from '../../../care/catalogue.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { useAllWords } from '../../words/use-all-words.ts';

/** Says who wrote a fact down, with whom, and when. */
export function useSigned(): (fact: Fact) => string {
  const { home } = useDesk();
  const words = useAllWords();
  const names = namesIn(home, words.refusals.somebody);
  return (fact) =>
    words.testPage.signedAt(
      words.facts.signed(names.staff(fact.by), (fact.with ?? []).map(names.staff)),
      fact.at,
    );
}
