import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import { Icon, type IconName } from '../icon/icon.tsx';
import { useChoiceKeys } from './use-choice-keys.ts';
import { type DeafnessOptions, useDeafness } from './use-deafness.ts';
import './sign-choice.css';

export interface PersonSign<Key extends string = string> {
  readonly key: Key;
  readonly mark: IconName;
  /** What it means: "Yes". */
  readonly word: string;
  /** How this person shows it, in their own plan's words. */
  readonly sign: string;
}

export interface SignChoiceProps<Key extends string> extends DeafnessOptions {
  readonly question: string;
  readonly signs: readonly PersonSign<Key>[];
  readonly onPick: (key: Key, at: number) => void;
}

/** What the person was seen to do, among their own signs. None is larger or nearer than another. */
export function SignChoice<Key extends string>(props: SignChoiceProps<Key>): JSX.Element {
  const { question, signs, onPick, ...deafness } = props;
  const isDeaf = useDeafness(deafness);
  const group = useChoiceKeys();
  const id = useId();
  return (
    <div ref={group} class="sign-choice" role="group" aria-labelledby={id}>
      <p id={id}>{question}</p>
      <ol>
        {signs.map((sign) => (
          <li key={sign.key}>
            <button
              type="button"
              onClick={() => {
                if (!isDeaf()) onPick(sign.key, deafness.now());
              }}
            >
              <Icon name={sign.mark} />
              <b>{sign.word}</b>
              <span>{sign.sign}</span>
            </button>
          </li>
        ))}
      </ol>
    </div>
  );
}
