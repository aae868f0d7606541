import { below, seededChance } from '../../src/statistics/random/chance.ts';
import {
  roundOfPairs,
  type StaffedJob,
  type StaffedRound,
} from '../../src/statistics/scheduling/staffed-round.ts';

const chance = seededChance(24);
const HORIZON = 60;

/** 24 visits in four cohorts, drawn by seed. */
function draw(id: number): StaffedJob {
  const share = id / 24;
  return {
    cohort: share < 0.5 ? 0 : share < 0.75 ? 1 : share < 0.92 ? 2 : 3,
    duration: 2 + below(chance, 3),
    release: below(chance, 3) === 0 ? below(chance, 12) : 0,
    due: below(chance, 5) === 0 ? 30 + below(chance, 8) : HORIZON,
    unservedCost: 200,
    level: 1 + below(chance, 2),
    noGo: below(chance, 8) === 0 ? [below(chance, 5)] : [],
    ...(below(chance, 3) === 0 && { wish: below(chance, 5) }),
  };
}

const round: StaffedRound = {
  jobs: Array.from({ length: 24 }, (_, id) => draw(id)),
  staff: [2, 2, 1, 1, 0].map((level) => ({ level, from: 0, until: HORIZON })),
  apart: [[1, 3]],
  changeover: 2,
  weights: { finish: 10, wish: 3, imbalance: 1 },
};

export const roundOf24 = roundOfPairs(round, [
  [0, 4],
  [1, 2],
]);
