import type { Words } from '../../words/en.ts';
import type { BeadState } from './bead-state.ts';

/** One step of a wire: its label is already in the reader's language. */
export interface WireStep {
  readonly key: string;
  readonly label: string;
  readonly state: BeadState;
}

export interface WireSummary {
  readonly done: number;
  /** Steps that count: all but those not needed. */
  readonly of: number;
  readonly now: string | undefined;
  readonly next: string | undefined;
  readonly look: readonly string[];
  /** Nothing left to do, in hand or to look at. */
  readonly tallies: boolean;
}

/** What a wire shows, counted, so that it can be said in words. */
export function summariseWire(steps: readonly WireStep[]): WireSummary {
  const labels = (state: BeadState): readonly string[] =>
    steps.filter((step) => step.state === state).map((step) => step.label);
  return {
    done: labels('done').length,
    of: steps.length - labels('unneeded').length,
    now: labels('hand')[0],
    next: labels('todo')[0],
    look: labels('look'),
    tallies: steps.every((step) => step.state === 'done' || step.state === 'unneeded'),
  };
}

/** The wire in a sentence or three, for screen readers, narrow screens and print. */
export function sayWire(steps: readonly WireStep[], words: Words): string {
  const { done, of, now, next, look, tallies } = summariseWire(steps);
  if (tallies) return words.frame.tallies;
  const said = [words.frame.doneOf({ done, of })];
  if (look.length > 0) said.push(words.frame.lookAt(look));
  if (now !== undefined) said.push(words.frame.now(now));
  else if (look.length === 0 && next !== undefined) said.push(words.frame.next(next));
  return said.join(' ');
}
