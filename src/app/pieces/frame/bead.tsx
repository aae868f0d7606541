import type { JSX } from 'preact';
import type { BeadState } from './bead-state.ts';
import './bead.css';

/**
 * One bead as a shape: ring, half-filled disc, disc, dash, diamond. It says nothing by itself: put the
 * word beside it, seen or unseen.
 */
export function Bead({ state }: { readonly state: BeadState }): JSX.Element {
  return (
    <svg class="bead" data-state={state} viewBox="0 0 32 32" aria-hidden="true">
      {shapes[state]}
    </svg>
  );
}

const shapes: Readonly<Record<BeadState, JSX.Element>> = {
  todo: <circle class="bead-hollow" cx="16" cy="16" r="11.5" />,
  hand: (
    <>
      <circle class="bead-hollow" cx="16" cy="16" r="12.5" />
      <path class="bead-solid" d="M16 3.5a12.5 12.5 0 0 0 0 25z" />
    </>
  ),
  done: <circle class="bead-solid" cx="16" cy="16" r="13.5" />,
  unneeded: (
    <>
      <rect class="bead-gap" x="3" y="9" width="26" height="14" />
      <rect class="bead-solid" x="7" y="13.25" width="18" height="5.5" rx="2.75" />
    </>
  ),
  look: <path class="bead-solid" d="M16 .8 31.2 16 16 31.2.8 16z" stroke-linejoin="round" />,
};
