/** How long a swab should stay in place, in seconds; `from` and `to` are equal where one is named. */
export interface DwellTarget {
  readonly from: number;
  readonly to: number;
}

export interface DwellView {
  /** Whole seconds gone. */
  readonly gone: number;
  readonly phase: 'short' | 'enough' | 'past';
  /** Whole seconds still to go until long enough; 0 from then on. */
  readonly toGo: number;
  /** One bead a second up to the target's end: whether it is filled. */
  readonly beads: readonly boolean[];
}

/** What the dial shows after `elapsed` seconds. Only whole seconds that have passed count. */
export function viewDwell(elapsed: number, { from, to }: DwellTarget): DwellView {
  const gone = Math.max(0, Math.floor(elapsed));
  return {
    gone,
    phase: gone < from ? 'short' : gone <= to || from === to ? 'enough' : 'past',
    toGo: Math.max(0, from - gone),
    beads: Array.from({ length: to }, (_, i) => i < gone),
  };
}
