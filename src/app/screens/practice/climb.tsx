import type { JSX } from 'preact';
import type { Practice } from '../../../care/practice/practice.ts';
import { useAllWords } from '../../words/use-all-words.ts';
import './practice.css';

const WIDE = 28;
const HIGH = 16;
const EDGE = 14;

/** Where the ladder stood after each session: a stair that goes up, stays, or comes down. */
export function Climb({ practice }: { readonly practice: Practice }): JSX.Element {
  const { practising: say } = useAllWords();
  const { heights, steps, next, sessions } = practice;
  const of = steps.length;
  const width = EDGE * 2 + WIDE * Math.max(heights.length, 4);
  const height = EDGE * 2 + HIGH * of;
  const x = (i: number) => EDGE + WIDE * i;
  const y = (at: number) => height - EDGE - HIGH * at;
  const path = heights.map((at, i) => `H${x(i) + WIDE / 2} V${y(at)} H${x(i + 1)}`).join(' ');
  const first = heights[0] === undefined ? 0 : Math.max(0, heights[0] - 1);
  return (
    <svg
      class="climb"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={say.drawing(sessions.length, next, of)}
    >
      {Array.from({ length: of + 1 }, (_, at) => (
        <line key={at} class="climb-step" x1={EDGE} x2={width - EDGE} y1={y(at)} y2={y(at)} />
      ))}
      <path class="climb-path" d={`M${EDGE} ${y(first)} ${path}`} />
      {heights.map((at, i) => (
        <Mark key={i} end={sessions[i]?.data.end ?? 'done'} x={x(i) + WIDE * 0.75} y={y(at)} />
      ))}
    </svg>
  );
}

/** Shape carries what came of it: a disc done, a ring not yet, a diamond where it upset them. */
function Mark({ end, x, y }: { end: string; x: number; y: number }): JSX.Element {
  if (end === 'distressed') {
    return <path class="climb-upset" d={`M${x} ${y - 6} l6 6 l-6 6 l-6 -6 z`} />;
  }
  return <circle class={end === 'done' ? 'climb-done' : 'climb-stay'} cx={x} cy={y} r="5" />;
}
