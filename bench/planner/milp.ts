import loadHighs from 'highs';
import type {
  LaneProblem,
  LaneSequences,
} from '../../src/statistics/scheduling/lanes/lane-problem.ts';

// A plain mixed-integer programme, as one would first write it: who goes on which lane, in which window,
// and which of two on one lane comes first (big M). The cost of walking, which hangs on who directly
// follows whom, is left out of it, so its bound is a little low and its orders are judged afterwards.

export interface MilpAnswer {
  readonly status: string;
  readonly sequences: LaneSequences | undefined;
  readonly seconds: number;
}

const BIG = 1000;

function programme({ jobs, lanes, slots, steps, limits, weights }: LaneProblem): string {
  const lines: string[] = [];
  const cost: string[] = [
    `${weights.finish} F`,
    `${weights.imbalance} MX`,
    `- ${weights.imbalance} MN`,
  ];
  const bins: string[] = [];
  for (const [j, job] of jobs.entries()) {
    cost.push(`${job.leftOutCost} o${j}`);
    bins.push(`o${j}`);
    const ways: string[] = [];
    for (const k of lanes.keys()) {
      const own = (slots[j]?.[k] ?? []).map((slot, q) => ({ ...slot, name: `w${j}_${k}_${q}` }));
      bins.push(`a${j}_${k}`, ...own.map(({ name }) => name));
      lines.push(
        `${own
          .map(({ name }) => name)
          .concat(`- a${j}_${k}`)
          .join(' + ')
          .replaceAll('+ -', '-')} = 0`,
      );
      for (const { name, from, until, price } of own) {
        if (price > 0) cost.push(`${price} ${name}`);
        lines.push(`s${j} - ${from} ${name} >= 0`);
        lines.push(`s${j} + ${BIG * 3} ${name} <= ${until - job.duration + BIG * 3}`);
      }
      const first = steps[jobs.length + k]?.[j]?.time ?? 0;
      const begin = (lanes[k] ?? 0) + (first === Infinity ? BIG * 3 : first);
      lines.push(`s${j} - ${begin} a${j}_${k} >= 0`);
      ways.push(`a${j}_${k}`);
    }
    lines.push(`${[...ways, `o${j}`].join(' + ')} = 1`);
    lines.push(`F - s${j} + ${BIG * 3} o${j} >= ${job.duration - weights.origin}`);
    if (limits.finish < Infinity) lines.push(`s${j} <= ${limits.finish - job.duration}`);
    for (let i = 0; i < j; i++) {
      bins.push(`y${i}_${j}`);
      for (const k of lanes.keys()) {
        for (const [x, y, before] of [
          [i, j, 1],
          [j, i, 0],
        ] as const) {
          const time = steps[x]?.[y]?.time ?? 0;
          if (time === Infinity) {
            const y1 = before === 1 ? `+ y${i}_${j}` : `- y${i}_${j}`;
            lines.push(`a${x}_${k} + a${y}_${k} ${y1} <= ${before + 1}`);
            continue;
          }
          const order = before === 1 ? `- ${BIG} y${i}_${j}` : `+ ${BIG} y${i}_${j}`;
          const base = before === 1 ? 3 : 2;
          const gap = (jobs[x]?.duration ?? 0) + time;
          // s_y >= s_x + gap unless another order or lane.
          lines.push(
            `s${y} - s${x} ${order} - ${BIG} a${x}_${k} - ${BIG} a${y}_${k} >= ${gap - base * BIG}`,
          );
        }
      }
    }
  }
  for (const k of lanes.keys()) {
    const work = jobs.map((job, j) => `- ${job.duration} a${j}_${k}`).join(' ');
    lines.push(`MX ${work} >= 0`, `MN ${work} <= 0`);
  }
  return [
    'Minimize',
    ` obj: ${cost.join(' + ').replaceAll('+ -', '-')}`,
    'Subject To',
    ...lines.map((line, i) => ` c${i}: ${line}`),
    'Binaries',
    ` ${bins.join(' ')}`,
    'End',
  ].join('\n');
}

export async function byMilp(problem: LaneProblem, seconds: number): Promise<MilpAnswer> {
  const highs = await loadHighs();
  const from = performance.now();
  try {
    const found = highs.solve(programme(problem), { time_limit: seconds });
    const columns = found.Columns as Readonly<Record<string, { readonly Primal?: number }>>;
    const value = (name: string): number => columns[name]?.Primal ?? 0;
    const any = problem.jobs.some((_, j) => columns[`o${j}`]?.Primal !== undefined);
    const sequences = problem.lanes.map((_, k) =>
      [...problem.jobs.keys()]
        .filter((j) => value(`a${j}_${k}`) > 0.5)
        .sort((a, b) => value(`s${a}`) - value(`s${b}`)),
    );
    return {
      status: found.Status,
      sequences: any ? sequences : undefined,
      seconds: (performance.now() - from) / 1000,
    };
  } catch (error) {
    return {
      status: `failed: ${(error as Error).message}`,
      sequences: undefined,
      seconds: (performance.now() - from) / 1000,
    };
  }
}
