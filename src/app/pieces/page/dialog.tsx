import type { ComponentChildren, JSX } from 'preact';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';
import { useWords } from '../../words/use-words.ts';
import { Button } from '../form/button.tsx';
import './dialog.css';

export interface DialogProps {
  readonly open: boolean;
  readonly title: string;
  /** Escape, the close button, or whatever the caller puts inside. */
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

/**
 * The browser's own modal dialog: it keeps the focus inside and gives it back. For a task beside the
 * page, never for "are you sure?".
 */
export function Dialog({ open, title, onClose, children }: DialogProps): JSX.Element {
  const { form } = useWords();
  const box = useRef<HTMLDialogElement>(null);
  const id = useId();
  useLayoutEffect(() => {
    const { current } = box;
    if (current === null || current.open === open) return;
    if (open) current.showModal();
    else current.close();
  }, [open]);
  return (
    <dialog ref={box} class="dialog" aria-labelledby={id} onClose={onClose}>
      <header>
        <h2 id={id}>{title}</h2>
        <Button icon="close" onPress={onClose}>
          {form.close}
        </Button>
      </header>
      {open && children}
    </dialog>
  );
}
