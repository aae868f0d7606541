import * as v from 'valibot';
import type { PlanInstance, PlanInstanceInput } from '../../src/care/rounds/planning/instance.ts';
import { planInstance } from '../../src/care/rounds/planning/instance.ts';
import { clock } from '../../src/care/rounds/planning/minutes.ts';
import { below, seededChance } from '../../src/statistics/random/chance.ts';

export interface DrawnSize {
  readonly people: number;
  readonly staff: number;
  readonly pairs: number;
  /** With rules that bind often, for tests; without, a morning as it usually is. */
  readonly tight?: boolean;
}

const cohorts = ['no-known-exposure', 'exposed', 'symptomatic', 'positive'] as const;

/** An invented round, drawn by seed. */
export function drawInput(
  seed: number,
  { people, staff, pairs, tight }: DrawnSize,
): PlanInstanceInput {
  const chance = seededChance(seed);
  const one = (n: number): boolean => below(chance, n) === 0;
  const staffIds = Array.from({ length: staff }, (_, i) => `S${i + 1}`);
  const someStaff = (): string => staffIds[below(chance, staff)] as string;
  const from = 7 * 60 + 30;
  const span = (start: number, length: number) => ({
    from: clock(start),
    until: clock(start + length),
  });
  return {
    from: clock(from),
    people: Array.from({ length: people }, (_, i) => ({
      id: `P${i + 1}`,
      cohort: cohorts[one(3) ? 1 + below(chance, 3) : 0] as (typeof cohorts)[number],
      unit: ['Oak', 'Elm'][below(chance, 2)] as string,
      room: String(1 + i),
      ...(one(3) && {
        windows: one(3)
          ? [span(from + below(chance, 60), 60), span(from + 180, 60 + below(chance, 90))]
          : [span(from + below(chance, 120), 60 + below(chance, 200))],
      }),
      ...(one(2) && { meals: [span(from + 15 * below(chance, 4), 20)] }),
      ...(one(12) && { preparation: { leadMinutes: 30 + 15 * below(chance, 3) } }),
      ...(one(5) && { preferred: [someStaff()] }),
      ...(one(10) && { excluded: [someStaff()] }),
      ...(one(tight ? 5 : 12) && { swabberGender: 'woman' }),
      minutes: { mean: 6 + below(chance, 9), sd: 2 + below(chance, 3) },
      stopChance: one(4) ? 0.2 : 0.03,
      weight: 1 + below(chance, 3),
    })),
    staff: staffIds.map((id, i) => ({
      id,
      gender: i % 2 === 0 ? 'woman' : 'man',
      shift: one(4) ? span(from - 30, 240) : span(from - 30, 480),
      ...(one(2) && { away: [span(from + 120 + 15 * below(chance, 4), 15)] }),
      maySwab: i < 2 || one(2),
      mayRecord: i < 4 || one(2),
    })),
    rules: {
      pairs,
      pairsMayChange: tight === true && one(3),
      ...(staff > 3 && { apart: [['S1', `S${staff}`]] }),
      collections: tight && one(3) ? [clock(from + 150), clock(from + 300)] : [clock(from + 420)],
      ...(tight && one(4) && { storageMinutes: 120 + below(chance, 200) }),
      ...(tight && one(3) && { register: { minutesEach: 3, by: clock(from + 400) } }),
      ...(tight &&
        one(3) && { unitsApart: one(2) ? ('full-change' as const) : ('own-pair' as const) }),
    },
    ...(tight &&
      one(3) && {
        supplies: {
          kits: 1 + below(chance, people),
          aprons: 2 * (1 + below(chance, people)),
          masks: 4 + 2 * below(chance, 4),
        },
      }),
  };
}

export const drawInstance = (seed: number, size: DrawnSize): PlanInstance =>
  v.parse(planInstance, drawInput(seed, size));
