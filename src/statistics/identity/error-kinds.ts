/** Of all errors of a kind that could happen to a valid code, the share that the scheme lets pass. */
export interface UndetectedErrorRates {
  /** One character replaced: a for b. */
  readonly substitution: number;
  /** ab for ba. */
  readonly adjacentTransposition: number;
  /** abc for cba. */
  readonly jumpTransposition: number;
  /** aa for bb. */
  readonly twin: number;
  /** aca for bcb. */
  readonly jumpTwin: number;
  /** a0 for 1a (fifty for fifteen), digits 2 to 9. */
  readonly phonetic: number;
}

/** An error: the values of the characters before and after, on neighbouring places. */
export type CodeError = readonly [before: readonly number[], after: readonly number[]];

/** Every error of a kind on `width` neighbouring places, over an alphabet of so many characters. */
export type ErrorKind = {
  readonly width: number;
  readonly errors: (size: number) => readonly CodeError[];
};

const pairsOf = (size: number): readonly (readonly [number, number])[] =>
  Array.from({ length: size * size }, (_, i) => [Math.floor(i / size), i % size] as const).filter(
    ([a, b]) => a !== b,
  );

const withMiddle = (
  size: number,
  make: (a: number, b: number, c: number) => CodeError,
): readonly CodeError[] =>
  pairsOf(size).flatMap(([a, b]) => Array.from({ length: size }, (_, c) => make(a, b, c)));

export const ERROR_KINDS: Readonly<Record<keyof UndetectedErrorRates, ErrorKind>> = {
  substitution: { width: 1, errors: (size) => pairsOf(size).map(([a, b]) => [[a], [b]]) },
  adjacentTransposition: {
    width: 2,
    errors: (size) =>
      pairsOf(size).map(([a, b]) => [
        [a, b],
        [b, a],
      ]),
  },
  jumpTransposition: {
    width: 3,
    errors: (size) =>
      withMiddle(size, (a, b, c) => [
        [a, c, b],
        [b, c, a],
      ]),
  },
  twin: {
    width: 2,
    errors: (size) =>
      pairsOf(size).map(([a, b]) => [
        [a, a],
        [b, b],
      ]),
  },
  jumpTwin: {
    width: 3,
    errors: (size) =>
      withMiddle(size, (a, b, c) => [
        [a, c, a],
        [b, c, b],
      ]),
  },
  phonetic: {
    width: 2,
    errors: (size) =>
      Array.from({ length: Math.min(size, 10) - 2 }, (_, i) => i + 2).flatMap((a): CodeError[] => [
        [
          [a, 0],
          [1, a],
        ],
        [
          [1, a],
          [a, 0],
        ],
      ]),
  },
};
