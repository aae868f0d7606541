import type { JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { Bead } from './bead.tsx';
import type { BeadState } from './bead-state.ts';
import type { BeadAction, FrameRowData, TallyFrameProps } from './frame-data.ts';
import { sayWire } from './wire-summary.ts';

interface FrameRowProps extends Pick<TallyFrameProps, 'steps' | 'beadAction'> {
  readonly row: FrameRowData;
}

/** One person's wire in the frame. */
export function FrameRow({ row, steps, beadAction }: FrameRowProps): JSX.Element {
  const words = useWords();
  const wire = steps.map((step, i) => ({ ...step, state: row.beads[i] ?? ('todo' as const) }));
  return (
    <tr
      role="row"
      data-current={row.current === true}
      aria-current={row.current === true ? 'true' : undefined}
    >
      <th role="rowheader" scope="row">
        {row.href === undefined ? (
          <span class="frame-name">{row.name}</span>
        ) : (
          <a class="frame-name" href={row.href}>
            {row.name}
          </a>
        )}
        {row.note !== undefined && <span class="frame-note">{row.note}</span>}
        <span class="frame-said" aria-hidden="true">
          {sayWire(wire, words)}
        </span>
      </th>
      {wire.map((step) => (
        <td key={step.key} role="cell">
          <FrameBead
            name={row.name}
            step={step.label}
            state={step.state}
            action={beadAction?.(row.key, step.key)}
          />
        </td>
      ))}
    </tr>
  );
}

interface FrameBeadProps {
  readonly name: string;
  readonly step: string;
  readonly state: BeadState;
  readonly action: BeadAction | undefined;
}

function FrameBead({ name, step, state, action }: FrameBeadProps): JSX.Element {
  const { frame } = useWords();
  const word = frame.states[state];
  if (action === undefined) {
    return (
      <span class="frame-bead">
        <Bead state={state} />
        <span class="unseen">{word}</span>
      </span>
    );
  }
  const label = frame.beadOf({ name, step, state: word });
  return 'href' in action ? (
    <a class="frame-bead" href={action.href} aria-label={label}>
      <Bead state={state} />
    </a>
  ) : (
    <button type="button" class="frame-bead" onClick={action.onPress} aria-label={label}>
      <Bead state={state} />
    </button>
  );
}
