import type { BeadState } from './bead-state.ts';

export interface FrameStep {
  readonly key: string;
  readonly label: string;
}

export interface FrameRowData {
  readonly key: string;
  readonly name: string;
  /** One line under the name: when, where, what is wrong. */
  readonly note?: string | undefined;
  /** Where the name leads. */
  readonly href?: string | undefined;
  /** The turn now under way. */
  readonly current?: boolean | undefined;
  /** One state for each step, in the order of the steps. */
  readonly beads: readonly BeadState[];
}

/** What pressing a bead does: leads somewhere or calls something. */
export type BeadAction = { readonly href: string } | { readonly onPress: () => void };

export interface TallyFrameProps {
  readonly caption: string;
  readonly steps: readonly FrameStep[];
  readonly rows: readonly FrameRowData[];
  /** Beads that can be pressed; undefined for one that is only a picture. */
  readonly beadAction?: ((row: string, step: string) => BeadAction | undefined) | undefined;
}
