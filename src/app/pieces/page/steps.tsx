import type { JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { Bead } from '../frame/bead.tsx';
import type { BeadState } from '../frame/bead-state.ts';
import './steps.css';

export interface StepsProps {
  /** What the whole is called, for screen readers. */
  readonly name: string;
  readonly labels: readonly string[];
  /** Counted from 0. */
  readonly current: number;
}

const stateAt = (i: number, current: number): BeadState =>
  i < current ? 'done' : i === current ? 'hand' : 'todo';

/** Where one is in a task of several pages, such as preparing a round. */
export function Steps({ name, labels, current }: StepsProps): JSX.Element {
  const { list, frame } = useWords();
  return (
    <div class="steps">
      <p class="steps-count">{list.stepOf({ step: current + 1, of: labels.length })}</p>
      <ol aria-label={name}>
        {labels.map((label, i) => (
          <li key={label} aria-current={i === current ? 'step' : undefined}>
            <Bead state={stateAt(i, current)} />
            {label}
            <span class="unseen"> {frame.states[stateAt(i, current)]}</span>
          </li>
        ))}
      </ol>
    </div>
  );
}
