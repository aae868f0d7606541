import type { JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { Bead } from './bead.tsx';
import { sayWire, type WireStep } from './wire-summary.ts';
import './wire.css';

export interface WireProps {
  readonly steps: readonly WireStep[];
  /** Large heads a turn and names each step; small stands beside a test and is one picture. */
  readonly size?: 'large' | 'small';
  /** Whose wire, for screen readers. */
  readonly name: string;
}

/** One person's wire. */
export function Wire({ steps, size = 'large', name }: WireProps): JSX.Element {
  return size === 'small' ? (
    <SmallWire steps={steps} name={name} />
  ) : (
    <LargeWire steps={steps} name={name} />
  );
}

function LargeWire({ steps, name }: Omit<WireProps, 'size'>): JSX.Element {
  const words = useWords();
  return (
    <div class="wire" data-size="large">
      <ol class="wire-beads" aria-label={words.frame.wireOf(name)}>
        {steps.map((step) => (
          <li key={step.key} aria-current={step.state === 'hand' ? 'step' : undefined}>
            <Bead state={step.state} />
            <span class="wire-label" aria-hidden="true">
              {step.label}
            </span>
            <span class="unseen">
              {words.frame.bead({ step: step.label, state: words.frame.states[step.state] })}
            </span>
          </li>
        ))}
      </ol>
      <p class="wire-said" aria-hidden="true">
        {sayWire(steps, words)}
      </p>
    </div>
  );
}

function SmallWire({ steps, name }: Omit<WireProps, 'size'>): JSX.Element {
  const words = useWords();
  return (
    <span
      class="wire"
      data-size="small"
      role="img"
      aria-label={words.frame.wireSaid({ name, said: sayWire(steps, words) })}
    >
      {steps.map((step) => (
        <Bead key={step.key} state={step.state} />
      ))}
    </span>
  );
}
