import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { AllWords } from './en-all.ts';

const AllWordsContext = createContext<AllWords | null>(null);

export const AllWordsProvider = AllWordsContext.Provider;

/** Every word of the language in use, for pages whose script comes late: with-all-words.tsx puts them above. */
export function useAllWords(): AllWords {
  const words = useContext(AllWordsContext);
  if (words === null) throw new Error('useAllWords: no AllWordsProvider above');
  return words;
}
