import type { Fact } from '../../../care/catalogue.ts';
import { useDesk } from '../../desk/desk.ts';
import { signedBy } from '../../desk/names.ts';
import { useAllWords } from '../../words/use-all-words.ts';

/** Says who wrote a fact down, with whom, and when. */
export function useSigned(): (fact: Fact) => string {
  const { home } = useDesk();
  const words = useAllWords();
  return (fact) => words.testPage.signedAt(signedBy(fact, home, words), fact.at);
}
