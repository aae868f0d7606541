import type { Fact } from '../../../care/catalogue.ts';
import { useDesk } from '../../desk/desk.ts';
import { signedBy } from '../../desk/names.ts';
import { useWords } from '../../words/use-words.ts';

/** Says who wrote a fact down, with whom, and when. */
export function useSigned(): (fact: Fact) => string {
  const { home } = useDesk();
  const words = useWords();
  return (fact) => words.testPage.signedAt(signedBy(fact, home, words), fact.at);
}
