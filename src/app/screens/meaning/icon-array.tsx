import type { JSX } from 'preact';

const COUNT = 100;
const ACROSS = 10;
const STEP = 20;

/**
 * A hundred people, so many of them filled in: a picture of one number. Filled and empty differ in
 * shape as well as in colour. To a screen reader it is one picture with a name.
 */
export function IconArray({
  share,
  label,
}: {
  readonly share: number;
  readonly label: string;
}): JSX.Element {
  const filled = Math.round(share * COUNT);
  return (
    <svg
      class="icon-array"
      viewBox={`0 0 ${ACROSS * STEP} ${ACROSS * STEP}`}
      role="img"
      aria-label={label}
    >
      {Array.from({ length: COUNT }, (_, i) => (
        <g
          key={i}
          data-has={i < filled}
          transform={`translate(${(i % ACROSS) * STEP} ${Math.floor(i / ACROSS) * STEP})`}
        >
          <circle cx="10" cy="5.5" r="3.5" />
          <path d="M3.5 18v-3a6.5 5 0 0 1 13 0v3z" />
        </g>
      ))}
    </svg>
  );
}
