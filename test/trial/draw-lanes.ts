import { below, seededChance } from '../../src/statistics/random/chance.ts';
import type { LaneProblem, LaneSlot } from '../../src/statistics/scheduling/lanes/lane-problem.ts';

/** A small problem drawn by seed: groups in order, several windows, limits that bind now and then. */
export function drawLanes(seed: number, jobs: number, lanes: number): LaneProblem {
  const chance = seededChance(seed);
  const group = Array.from({ length: jobs }, () => below(chance, 3));
  const slotsOf = (): LaneSlot[] => {
    if (below(chance, 5) === 0) return [];
    const from = below(chance, 12);
    const until = from + 4 + below(chance, 20);
    const price = below(chance, 4) === 0 ? 3 : 0;
    if (below(chance, 3) > 0) return [{ from, until, price }];
    return [
      { from, until, price },
      { from: until + 2, until: until + 12, price: below(chance, 4) === 0 ? 7 : price },
    ];
  };
  const step = (before: number | undefined, after: number) => {
    const back = before !== undefined && before > after;
    const change = before !== undefined && before < after;
    return {
      time: back ? Infinity : change ? 3 : below(chance, 2),
      cost: below(chance, 2),
      uses: change ? 1 : 0,
    };
  };
  return {
    jobs: Array.from({ length: jobs }, () => ({
      duration: 1 + below(chance, 5),
      leftOutCost: [200, 60, 12][below(chance, 3)] as number,
      ...(below(chance, 4) === 0 && { promised: { start: 5 + below(chance, 10), weight: 1 } }),
    })),
    lanes: Array.from({ length: lanes }, () => below(chance, 4)),
    slots: Array.from({ length: jobs }, () => Array.from({ length: lanes }, slotsOf)),
    steps: [...group, ...Array.from({ length: lanes }, () => undefined)].map((before) =>
      group.map((after) => step(before, after)),
    ),
    limits: {
      served: below(chance, 3) === 0 ? jobs - 1 : jobs,
      uses: below(chance, 4),
      finish: 14 + below(chance, 20),
      finishEach: below(chance, 2),
    },
    weights: { finish: 2, origin: 0, imbalance: 1 },
  };
}
