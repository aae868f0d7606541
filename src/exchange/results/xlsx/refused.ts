import type { FileProblem } from '../reported.ts';

/** Why a workbook is not read on. */
export class Refused extends Error {
  constructor(
    readonly problem: FileProblem['problem'],
    detail: string,
  ) {
    super(detail);
  }
}

/** Counts what a workbook makes this program keep; stops it where that is too much. */
export function tally(most: number, detail: string): (more: number) => void {
  let count = 0;
  return (more) => {
    count += more;
    if (count > most) throw new Refused('too-many', detail);
  };
}
