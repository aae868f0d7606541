import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { Button } from '../pieces/form/button.tsx';
import { Notice } from '../pieces/list/notice.tsx';
import { useAnnounce } from '../pieces/page/live-region.tsx';
import { saveFile } from '../screens/upload/save-file.ts';
import { useAllWords } from '../words/use-all-words.ts';
import type { PaperOf } from './make-paper.ts';

interface SavePaperProps {
  readonly of: PaperOf;
  /** The file's name, without its ending. Nobody's name stands in it: lists of files are seen by others. */
  readonly name: string;
  /** Done before anything is saved; nothing is saved unless it gives true. */
  readonly first?: (() => Promise<boolean>) | undefined;
}

type State = { readonly is: 'ready' | 'making' | 'failed' | 'saved' } | Missing;
interface Missing {
  readonly is: 'letters';
  readonly letters: readonly string[];
}

/** Saves a document as a PDF, made on the tablet itself, with or without a signal. */
export function SavePaper({ of, name, first }: SavePaperProps): JSX.Element {
  const { easyRead } = useAllWords();
  const say = easyRead.pdf;
  const announce = useAnnounce();
  const [state, setState] = useState<State>({ is: 'ready' });
  return (
    <div class="save-paper no-print">
      <Button onPress={() => void save()}>{say.save}</Button>
      {state.is === 'making' && <p role="status">{say.making}</p>}
      {state.is === 'saved' && <p class="soft">{say.saved}</p>}
      {state.is === 'failed' && <Notice kind="look" title={say.failed} />}
      {state.is === 'letters' && <Notice kind="look" title={say.letters(state.letters)} />}
    </div>
  );

  async function save(): Promise<void> {
    if (state.is === 'making') return;
    setState({ is: 'making' });
    try {
      const { makePaper } = await import('./make-paper.ts');
      const made = await makePaper(of);
      if (!made.ok) {
        setState({ is: 'letters', letters: made.letters });
        return;
      }
      if (first !== undefined && !(await first())) {
        setState({ is: 'ready' });
        return;
      }
      saveFile(made.pdf, `${name}.pdf`, 'application/pdf');
      setState({ is: 'saved' });
      announce(say.saved);
    } catch {
      setState({ is: 'failed' });
    }
  }
}
