import type { JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { Bead } from '../frame/bead.tsx';
import './chips.css';

export interface Chip {
  readonly key: string;
  readonly text: string;
  /** Needs somebody: it carries the diamond. */
  readonly look?: boolean;
}

/** A few words each beside a name: what to look at, and what is good to know. */
export function Chips({ chips }: { readonly chips: readonly Chip[] }): JSX.Element | null {
  const { frame } = useWords();
  if (chips.length === 0) return null;
  return (
    <ul class="chips">
      {chips.map(({ key, text, look = false }) => (
        <li key={key} data-look={look}>
          {look && <Bead state="look" />}
          {look && <span class="unseen">{frame.states.look}: </span>}
          {text}
        </li>
      ))}
    </ul>
  );
}
