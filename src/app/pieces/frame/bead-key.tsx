import type { JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { Bead } from './bead.tsx';
import { beadStates } from './bead-state.ts';
import './bead-key.css';

/** The five shapes with their words: put it under a frame where somebody may see one for the first time. */
export function BeadKey(): JSX.Element {
  const { frame } = useWords();
  return (
    <ul class="bead-key" aria-label={frame.key}>
      {beadStates.map((state) => (
        <li key={state}>
          <Bead state={state} />
          {frame.states[state]}
        </li>
      ))}
    </ul>
  );
}
