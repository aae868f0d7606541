import type { ComponentChildren, JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { useDesk } from '../desk/desk.ts';
import { useWordSettings } from '../desk/use-word-settings.ts';
import { allEnglish } from '../words/en-all.ts';
import { AllWordsProvider } from '../words/use-all-words.ts';

/** Puts every word above a page. It comes with the first late page (late-page.tsx), not before. */
export function WithAllWords({ children }: { readonly children: ComponentChildren }): JSX.Element {
  const settings = useWordSettings(useDesk());
  const words = useMemo(() => allEnglish(settings), [settings]);
  return <AllWordsProvider value={words}>{children}</AllWordsProvider>;
}
