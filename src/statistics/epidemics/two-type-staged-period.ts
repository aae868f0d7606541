import type { TwoTypeQuestion } from './two-type-question.ts';

/**
 * The joint law for exponential or Erlang infectious periods. An infective is so many stages to be
 * lived through, and a stage, having no memory, may be put aside: residents' stages go first.
 * State: susceptible residents and staff, stages waiting of each. Work: the number of states.
 */
export function stagedPeriodLaw({
  residents: m,
  staff: n,
  introductions,
  rates,
  period,
}: TwoTypeQuestion): Float64Array {
  const stages = period.law === 'erlang' ? period.shape : 1;
  const joint = new Float64Array((m + 1) * (n + 1));
  const wide = (s: number): number => stages * (n - s + introductions.staff) + 1;
  const high = (r: number): number => stages * (m - r + introductions.residents) + 1;
  const layer = (r: number): Float64Array[] =>
    Array.from({ length: n + 1 }, (_, s) => new Float64Array(high(r) * wide(s)));
  const endRate = stages / period.mean;
  let here = layer(m);
  (here[n] as Float64Array)[
    stages * introductions.residents * wide(n) + stages * introductions.staff
  ] = 1;
  for (let r = m; r >= 0; r--) {
    const below = r > 0 ? layer(r - 1) : [];
    for (let s = n; s >= 0; s--) {
      const grid: Grid = {
        here: here[s] as Float64Array,
        fewerStaff: here[s - 1],
        fewerResidents: below[s],
        width: wide(s),
        widthFewerStaff: s > 0 ? wide(s - 1) : 0,
        stages,
      };
      for (let w = high(r) - 1; w > 0; w--)
        liveRow(
          grid,
          w,
          w - 1,
          chances(endRate, rates.residentToResident * r, rates.residentToStaff * s),
        );
      liveStaff(grid, chances(endRate, rates.staffToResident * r, rates.staffToStaff * s));
      joint[r * (n + 1) + s] = grid.here[0] as number;
    }
    here = below;
  }
  return joint;
}

interface Grid {
  readonly here: Float64Array;
  /** The grid with one susceptible member of staff fewer, and with one resident fewer. */
  readonly fewerStaff: Float64Array | undefined;
  readonly fewerResidents: Float64Array | undefined;
  readonly width: number;
  readonly widthFewerStaff: number;
  readonly stages: number;
}

interface Chances {
  readonly ends: number;
  readonly resident: number;
  readonly staff: number;
}

/** Which comes first: the end of the stage, a resident infected, a member of staff infected. */
function chances(end: number, resident: number, staff: number): Chances {
  const all = end + resident + staff;
  return { ends: end / all, resident: resident / all, staff: staff / all };
}

/** One row of states with the same number of residents' stages waiting. */
function liveRow(
  { here, fewerStaff, fewerResidents, width, widthFewerStaff, stages }: Grid,
  row: number,
  endRow: number,
  c: Chances,
): void {
  const from = row * width;
  const toEnd = endRow * width;
  const toResident = (row + stages) * width;
  const toStaff = row * widthFewerStaff + stages;
  for (let v = 0; v < width; v++) {
    const p = here[from + v] as number;
    if (p === 0) continue;
    here[toEnd + v] = (here[toEnd + v] as number) + p * c.ends;
    if (fewerResidents)
      fewerResidents[toResident + v] = (fewerResidents[toResident + v] as number) + p * c.resident;
    if (fewerStaff) fewerStaff[toStaff + v] = (fewerStaff[toStaff + v] as number) + p * c.staff;
  }
}

/** No resident's stage waits: staff's stages are lived through. */
function liveStaff({ here, fewerStaff, fewerResidents, width, stages }: Grid, c: Chances): void {
  for (let v = width - 1; v > 0; v--) {
    const p = here[v] as number;
    if (p === 0) continue;
    here[v - 1] = (here[v - 1] as number) + p * c.ends;
    if (fewerResidents)
      fewerResidents[stages * width + v] =
        (fewerResidents[stages * width + v] as number) + p * c.resident;
    if (fewerStaff) fewerStaff[v + stages] = (fewerStaff[v + stages] as number) + p * c.staff;
  }
}
