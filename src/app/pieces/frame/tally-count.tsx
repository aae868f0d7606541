import type { JSX } from 'preact';
import { Bead } from './bead.tsx';
import './tally-count.css';

export interface TallyCountProps {
  readonly done: number;
  readonly of: number;
  /** The same in words, for whoever does not see the beads. */
  readonly text: string;
}

/** Ten beads to a wire, as on a counting frame. More than this are a number alone. */
const MOST = 100;

/** A count as beads: one is filled for each thing counted; one too many is a diamond. */
export function TallyCount({ done, of, text }: TallyCountProps): JSX.Element | null {
  const beads = Math.max(done, of);
  if (beads > MOST || beads < 1) return null;
  const wires = Array.from({ length: Math.ceil(beads / 10) }, (_, wire) => wire * 10);
  return (
    <div class="tally-count" role="img" aria-label={text}>
      {wires.map((from) => (
        <div key={from} class="tally-count-wire">
          {Array.from({ length: Math.min(10, beads - from) }, (_, i) => {
            const place = from + i;
            const state = place >= of ? 'look' : place < done ? 'done' : 'todo';
            return <Bead key={place} state={state} />;
          })}
        </div>
      ))}
    </div>
  );
}
