import type { JSX } from 'preact';
import './brand-mark.css';

/** The bead frame as a mark: three wires, each further than the next. The icons in public/ repeat it. */
export function BrandMark(): JSX.Element {
  return (
    <svg class="brand-mark" viewBox="0 0 40 40" aria-hidden="true">
      <path class="brand-wire" d="M5 12.5h30M5 20h30M5 27.5h30" />
      <path class="brand-wood" d="M4 5v30M36 5v30" />
      <g class="brand-done">
        <circle cx="11" cy="12.5" r="3" />
        <circle cx="20" cy="12.5" r="3" />
        <circle cx="29" cy="12.5" r="3" />
        <circle cx="11" cy="20" r="3" />
        <circle cx="11" cy="27.5" r="3" />
      </g>
      <path class="brand-look" d="M20 16.2 23.8 20 20 23.8 16.2 20z" />
      <path class="brand-hand" d="M20 24.5a3 3 0 0 0 0 6z" />
      <circle class="brand-ring" cx="20" cy="27.5" r="2.6" />
      <circle class="brand-ring" cx="29" cy="20" r="2.6" />
      <circle class="brand-ring" cx="29" cy="27.5" r="2.6" />
    </svg>
  );
}
