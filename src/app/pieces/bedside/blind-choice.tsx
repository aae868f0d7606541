import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import { useWords } from '../../words/use-words.ts';
import { useChoiceKeys } from './use-choice-keys.ts';
import { type DeafnessOptions, useDeafness } from './use-deafness.ts';
import './blind-choice.css';

/** A text heard (a birthday) or a face seen. A face carries no name: that is the point. */
export type BlindOption =
  | { readonly key: string; readonly text: string }
  | { readonly key: string; readonly photo: string };

export interface BlindChoiceProps extends DeafnessOptions {
  /** The open question to ask aloud. */
  readonly question: string;
  /** What to do with the answer. */
  readonly hint?: string | undefined;
  readonly options: readonly BlindOption[];
  /** Called with the key of the one picked, or null for "none of these". */
  readonly onPick: (key: string | null, at: number) => void;
}

/** A question to ask aloud and the choices to pick from, none of them marked in any way. */
export function BlindChoice({
  question,
  hint,
  options,
  onPick,
  ...deafness
}: BlindChoiceProps): JSX.Element {
  const { bedside } = useWords();
  const isDeaf = useDeafness(deafness);
  const group = useChoiceKeys();
  const id = useId();
  const pick = (key: string | null): void => {
    if (!isDeaf()) onPick(key, deafness.now());
  };
  const faces = options.every((option) => 'photo' in option);
  return (
    <div ref={group} class="blind-choice" role="group" aria-labelledby={id}>
      <p id={id} class="blind-question">
        {question}
      </p>
      {hint !== undefined && <p class="blind-hint">{hint}</p>}
      <ol class="blind-options" data-faces={faces}>
        {options.map((option, i) => (
          <li key={option.key}>
            <button type="button" onClick={() => pick(option.key)}>
              <kbd aria-hidden="true">{i + 1}</kbd>
              {'text' in option ? (
                option.text
              ) : (
                <img src={option.photo} alt={bedside.face(i + 1)} />
              )}
            </button>
          </li>
        ))}
        <li class="blind-none">
          <button type="button" onClick={() => pick(null)}>
            <kbd aria-hidden="true">{options.length + 1}</kbd>
            {bedside.noneOfThese}
          </button>
        </li>
      </ol>
      <p class="blind-keys">{bedside.choiceKeys(options.length + 1)}</p>
    </div>
  );
}
