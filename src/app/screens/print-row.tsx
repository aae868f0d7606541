import type { ComponentChildren, JSX } from 'preact';
import { Button } from '../pieces/form/button.tsx';
import { useAllWords } from '../words/use-all-words.ts';

/** Above a sheet on screen, and not on paper: print it, or go back. */
export function PrintRow({ children }: { readonly children?: ComponentChildren }): JSX.Element {
  const { runSheet } = useAllWords();
  return (
    <div class="button-row no-print">
      <Button kind="main" icon="print" onPress={() => window.print()}>
        {runSheet.print}
      </Button>
      {children}
    </div>
  );
}
