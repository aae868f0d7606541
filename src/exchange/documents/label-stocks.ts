/** One kind of sheet of sticky labels. All in millimetres. */
export interface LabelStock {
  readonly id: string;
  readonly paper: readonly [width: number, height: number];
  readonly columns: number;
  readonly rows: number;
  readonly label: readonly [width: number, height: number];
  /** Of the first label, from the paper's left and top edge. */
  readonly origin: readonly [x: number, y: number];
  /** From one label's left (top) edge to the next one's. */
  readonly pitch: readonly [x: number, y: number];
}

const A4 = [210, 297] as const;

/**
 * Common sheets, by how many labels they have and how large those are. Measures from memory: print one
 * page on plain paper and hold it against the sheet first.
 */
export const labelStocks: readonly LabelStock[] = [
  {
    ...{ id: 'a4-24', paper: A4, columns: 3, rows: 8, label: [63.5, 33.9] as const },
    ...{ origin: [7.2, 12.9] as const, pitch: [66, 33.9] as const },
  },
  {
    ...{ id: 'a4-65', paper: A4, columns: 5, rows: 13, label: [38.1, 21.2] as const },
    ...{ origin: [4.7, 10.7] as const, pitch: [40.6, 21.2] as const },
  },
  {
    ...{ id: 'a4-21', paper: A4, columns: 3, rows: 7, label: [63.5, 38.1] as const },
    ...{ origin: [7.2, 15.1] as const, pitch: [66, 38.1] as const },
  },
];

export const labelsOn = ({ columns, rows }: LabelStock): number => columns * rows;
