import type { JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { type DwellTarget, type DwellView, viewDwell } from './dwell.ts';
import './dwell-dial.css';

export interface DwellDialProps {
  /** Seconds since the swab was in place, from the caller's monotonic clock. */
  readonly elapsed: number;
  readonly target: DwellTarget;
}

/** A ring of beads, one a second. It has no clock and no motion of its own: a second fills a bead. */
export function DwellDial({ elapsed, target }: DwellDialProps): JSX.Element {
  const { bedside } = useWords();
  const view = viewDwell(elapsed, target);
  const aim = bedside.target(target);
  return (
    <div class="dwell-dial" data-phase={view.phase}>
      <svg viewBox="-120 -120 240 240" aria-hidden="true">
        {view.beads.map((filled, i) => (
          <SecondBead key={i} place={i} target={target} filled={filled} />
        ))}
      </svg>
      <div class="dwell-face" role="timer" aria-label={bedside.dial(aim)}>
        <DialWords view={view} />
      </div>
      {/* Spoken once, when the time is reached or passed; the seconds themselves are not. */}
      <p class="unseen" role="status">
        {view.phase === 'enough' && bedside.longEnough}
        {view.phase === 'past' && bedside.pastTarget(target.to)}
      </p>
      <p class="dwell-aim">{view.phase === 'past' ? bedside.pastTarget(target.to) : aim}</p>
    </div>
  );
}

function DialWords({ view }: { readonly view: DwellView }): JSX.Element {
  const { bedside } = useWords();
  if (view.phase === 'short') {
    return (
      <>
        <b>{view.toGo}</b>
        <span>{bedside.secondsToGo(view.toGo)}</span>
      </>
    );
  }
  return (
    <>
      <b>{view.gone}</b>
      <span>{view.phase === 'enough' ? bedside.longEnough : bedside.secondsSoFar(view.gone)}</span>
    </>
  );
}

interface SecondBeadProps {
  readonly place: number;
  readonly target: DwellTarget;
  readonly filled: boolean;
}

/** Seconds that must be are large; seconds that may be are small; a notch stands where enough begins. */
function SecondBead({ place, target, filled }: SecondBeadProps): JSX.Element {
  const radius = 100;
  const turn = ((place + 0.5) / target.to) * 2 * Math.PI;
  const must = place < target.from;
  const x = radius * Math.sin(turn);
  const y = -radius * Math.cos(turn);
  const notch = (target.from / target.to) * 360;
  return (
    <>
      {place === target.from && (
        <path class="dwell-notch" d="M0-119V-81" transform={`rotate(${notch})`} />
      )}
      <circle class="dwell-bead" data-filled={filled} cx={x} cy={y} r={must ? 14 : 10} />
    </>
  );
}
