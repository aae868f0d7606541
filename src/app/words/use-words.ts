import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Words } from './en.ts';

const WordsContext = createContext<Words | null>(null);

/** Wraps the app: `<WordsProvider value={english(settings)}>`. */
export const WordsProvider = WordsContext.Provider;

/** The words of the language in use. Throws outside a WordsProvider, which is a bug. */
export function useWords(): Words {
  const words = useContext(WordsContext);
  if (words === null) throw new Error('useWords: no WordsProvider above');
  return words;
}
