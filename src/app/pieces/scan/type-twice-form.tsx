import type { JSX } from 'preact';
import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Words } from '../../words/en.ts';
import { useWords } from '../../words/use-words.ts';
import { Button } from '../form/button.tsx';
import { type Trouble, type TypeTwice, typeEntry, typeStart } from './type-twice.ts';

export interface TypeTwiceFormProps {
  readonly least: number;
  readonly onCode: (code: string) => void;
  readonly onBack: () => void;
}

function troubleWords(trouble: Trouble, { scan }: Words): string {
  switch (trouble.kind) {
    case 'short':
      return scan.tooShort(trouble.least);
    case 'differ':
      return scan.differAt(trouble.place);
    case 'length':
      return scan.differInLength;
  }
}

/** The fallback to a scan: one field, filled twice. The first try is gone from sight before the second. */
export function TypeTwiceForm({ least, onCode, onBack }: TypeTwiceFormProps): JSX.Element {
  const words = useWords();
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [state, setState] = useState<TypeTwice>(typeStart);

  useLayoutEffect(() => field.current?.focus(), [state]);

  const submit = (event: Event): void => {
    event.preventDefault();
    if (field.current === null) return;
    const step = typeEntry(state, field.current.value, least);
    if (step.state.trouble?.kind !== 'short') field.current.value = '';
    setState(step.state);
    if (step.code !== undefined) onCode(step.code);
  };

  const again = state.at === 'again';
  return (
    <form class="type-twice" onSubmit={submit} noValidate>
      {state.trouble !== undefined && (
        <p id={`${id}-trouble`} class="field-problem" role="alert">
          {troubleWords(state.trouble, words)}
        </p>
      )}
      <label for={id}>{again ? words.scan.typeAgain : words.scan.typeFirst}</label>
      {again && (
        <p id={`${id}-note`} class="field-hint">
          {words.scan.typeAgainNote}
        </p>
      )}
      <input
        id={id}
        ref={field}
        class="field-input code-input"
        type="text"
        autoComplete="off"
        autoCapitalize="characters"
        spellcheck={false}
        aria-invalid={state.trouble !== undefined}
        aria-describedby={
          `${state.trouble === undefined ? '' : `${id}-trouble `}${again ? `${id}-note` : ''}`.trim() ||
          undefined
        }
        onPaste={(event) => event.preventDefault()}
        onDrop={(event) => event.preventDefault()}
      />
      <div class="button-row">
        <Button submit kind="main">
          {again ? words.scan.check : words.scan.next}
        </Button>
        <Button onPress={onBack}>{words.scan.backToScan}</Button>
      </div>
    </form>
  );
}
