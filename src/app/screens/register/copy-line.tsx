import type { ComponentChildren, JSX } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { Button } from '../../pieces/form/button.tsx';
import { useAnnounce } from '../../pieces/page/live-region.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

interface CopyLineProps {
  readonly label: string;
  /** What goes to the clipboard. */
  readonly text: string;
  /** How it is shown, where that differs. */
  readonly children?: ComponentChildren;
}

/** One detail with a button that copies it: nothing has to be typed from one window into another. */
export function CopyLine({ label, text, children }: CopyLineProps): JSX.Element {
  const { registering: say } = useAllWords();
  const announce = useAnnounce();
  const shown = useRef<HTMLElement>(null);
  const [done, setDone] = useState<'no' | 'copied' | 'by-hand'>('no');

  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      setDone('copied');
      announce(say.copied(label));
    } catch {
      // No clipboard on this page: the text is selected, ready to be copied by hand.
      if (shown.current !== null) getSelection()?.selectAllChildren(shown.current);
      setDone('by-hand');
      announce(say.notCopied);
    }
  };

  return (
    <div class="copy-line">
      <dt>{label}</dt>
      <dd ref={shown}>{children ?? text}</dd>
      <dd class="copy-press">
        {text !== '' && (
          <Button
            icon={done === 'copied' ? 'tick' : 'note'}
            onPress={() => void copy()}
            label={say.copyWhat(label)}
          >
            {say.copy}
          </Button>
        )}
        {done === 'by-hand' && <span class="field-hint">{say.notCopied}</span>}
      </dd>
    </div>
  );
}
