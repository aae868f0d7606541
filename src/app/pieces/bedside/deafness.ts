/**
 * A control that has just changed is deaf for a moment, so that the second half of a double touch,
 * meant for the last step, cannot answer this one.
 */
export interface Deafness {
  readonly step: string;
  /** When the step came on screen, in milliseconds on a monotonic clock. */
  readonly since: number;
}

/** How long a control stays deaf after a change (a proposal of ours; no source). */
export const usualDeafMs = 700;

/** Starts again whenever the step differs; otherwise stays as it was. */
export function hearStep(before: Deafness | undefined, step: string, now: number): Deafness {
  return before?.step === step ? before : { step, since: now };
}

export function isDeaf(state: Deafness, now: number, deafMs: number): boolean {
  return now - state.since < deafMs;
}
