import { given, type Outcome, refuse } from '../refusal/refusal.ts';

export interface FalseNegativeRate {
  readonly rate: number;
  /** 95 % credible interval. */
  readonly lower: number;
  readonly upper: number;
}

/** Which set of figures: the study printed two, and they differ by up to 4 points. */
export type FalseNegativeSet = 'repository-2020-10' | 'abstract-2020-05';

type Row = readonly [day: number, rate: number, lower: number, upper: number];

// Kucirka, Lauer, Laeyendecker, Boon & Lessler, Ann Intern Med 2020;173:262-267: RT-PCR, by days
// since exposure. The later run: results table of HopkinsIDD/covidRTPCR, 23 October 2020.
const REPOSITORY: readonly Row[] = [
  [1, 1, 1, 1],
  [2, 1, 0.96, 1],
  [3, 0.977, 0.588, 0.999],
  [4, 0.71, 0.296, 0.941],
  [5, 0.387, 0.184, 0.646],
  [6, 0.248, 0.14, 0.399],
  [7, 0.201, 0.125, 0.31],
  [8, 0.191, 0.12, 0.291],
  [9, 0.2, 0.128, 0.302],
  [10, 0.221, 0.145, 0.327],
  [11, 0.25, 0.167, 0.36],
  [12, 0.286, 0.195, 0.401],
  [13, 0.325, 0.226, 0.444],
  [14, 0.368, 0.262, 0.49],
  [15, 0.412, 0.3, 0.536],
  [16, 0.455, 0.338, 0.58],
  [17, 0.496, 0.376, 0.621],
  [18, 0.535, 0.412, 0.657],
  [19, 0.57, 0.446, 0.689],
  [20, 0.602, 0.478, 0.716],
  [21, 0.63, 0.508, 0.742],
];
// The figures of the article's abstract, May 2020.
const ABSTRACT: readonly Row[] = [
  [1, 1, 1, 1],
  [4, 0.67, 0.27, 0.94],
  [5, 0.38, 0.18, 0.65],
  [8, 0.2, 0.12, 0.3],
  [9, 0.21, 0.13, 0.31],
  [21, 0.66, 0.54, 0.77],
];

/**
 * How often RT-PCR misses an infection, by whole days since exposure. Days outside the table are
 * refused as 'not-tabulated': nothing is read between or beyond its rows.
 */
export function falseNegativeRateByDay(
  day: number,
  set: FalseNegativeSet = 'repository-2020-10',
): Outcome<FalseNegativeRate> {
  const rows = set === 'repository-2020-10' ? REPOSITORY : ABSTRACT;
  const row = rows.find(([tabulated]) => tabulated === day);
  if (!row) {
    return refuse(
      'not-tabulated',
      `Day ${day} is not in the table ${set}: it has days ${rows.map(([d]) => d).join(', ')}.`,
    );
  }
  return given({ rate: row[1], lower: row[2], upper: row[3] });
}
