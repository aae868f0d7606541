import type { FileProblem } from '../../exchange/results/reported.ts';

/** A list that cannot be read on, with its place. */
export class ListProblem extends Error {
  constructor(readonly told: FileProblem) {
    super(told.detail);
  }
}
