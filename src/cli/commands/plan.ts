import * as v from 'valibot';
import { conflictOf } from '../../care/rounds/planning/conflicts.ts';
import type { PlanInstanceInput } from '../../care/rounds/planning/instance.ts';
import { type PlanInstance, planInstance } from '../../care/rounds/planning/instance.ts';
import { makePlan } from '../../care/rounds/planning/make-plan.ts';
import { clock } from '../../care/rounds/planning/minutes.ts';
import type { RoundPlanMade } from '../../care/rounds/planning/plan.ts';
import { repairsFor } from '../../care/rounds/planning/repairs.ts';
import { movedSince } from '../../care/rounds/planning/replan.ts';
import { given, type Outcome, refuse } from '../../statistics/refusal/refusal.ts';
import { sayConflict, sayTried } from '../plan/words.ts';
import { statisticCommand } from '../statistic-command.ts';

const visit = v.object({
  person: v.string(),
  swabber: v.string(),
  recorder: v.string(),
  start: v.string(),
  end: v.string(),
  /** When to give the preparation, where there is one. */
  prepare: v.nullable(v.string()),
});

const output = v.object({
  lanes: v.array(v.array(visit)),
  leftOut: v.array(v.string()),
  finish: v.string(),
  packedBy: v.string(),
  cost: v.number(),
  costOf: v.object({
    leftOut: v.number(),
    prices: v.number(),
    steps: v.number(),
    promises: v.number(),
    finish: v.number(),
    imbalance: v.number(),
  }),
  /** No plan costs less; the gap is the share of the cost above it. */
  lowerBound: v.number(),
  gap: v.number(),
  proven: v.boolean(),
  chance: v.object({
    packed: v.number(),
    error: v.number(),
    interval: v.tuple([v.number(), v.number()]),
    everyone: v.number(),
    finish: v.tuple([v.string(), v.string(), v.string()]),
    asked: v.number(),
    draws: v.number(),
  }),
  seed: v.number(),
  iterations: v.number(),
  stopped: v.boolean(),
  pairings: v.number(),
  /** Where somebody is left out: rules that cannot all be kept, in words. */
  conflict: v.nullable(v.object({ rules: v.array(v.string()), proven: v.boolean() })),
  /** What would be enough, the least trouble first; each was tried. */
  repairs: v.array(v.object({ words: v.string(), chance: v.number(), finish: v.string() })),
  /** Where people had been told a time: who has another pair, and who starts later. */
  moved: v.object({
    otherPair: v.array(v.string()),
    later: v.array(v.object({ person: v.string(), minutes: v.number() })),
  }),
});
type Answer = v.InferOutput<typeof output>;

const example: PlanInstanceInput = {
  from: '09:00',
  people: [
    {
      id: 'Oriel',
      room: '1',
      minutes: { mean: 9, sd: 3 },
      meals: [{ from: '08:30', until: '08:50' }],
    },
    { id: 'Tamsin', room: '4', minutes: { mean: 12, sd: 5 }, preferred: ['Pia'] },
    {
      id: 'Bram',
      room: '2',
      cohort: 'exposed',
      minutes: { mean: 8 },
      windows: [{ from: '09:30', until: '11:00' }],
    },
  ],
  staff: [
    { id: 'Pia', shift: { from: '07:00', until: '15:00' }, maySwab: true, mayRecord: true },
    { id: 'Jonah', shift: { from: '07:00', until: '15:00' }, maySwab: false, mayRecord: true },
  ],
  rules: { pairs: 1, collections: ['14:30'] },
};

function lanesOf(instance: PlanInstance, plan: RoundPlanMade): Answer['lanes'] {
  return plan.lanes.map((lane) =>
    lane.map(({ start, end, ...who }) => {
      const lead = instance.people.find(({ id }) => id === who.person)?.preparation?.leadMinutes;
      const prepare = lead === undefined ? null : clock(start - lead);
      return { ...who, start: clock(start), end: clock(end), prepare };
    }),
  );
}

/** A whole number from an option, or what stands in for it. */
function whole(flags: Readonly<Record<string, unknown>>, name: string, otherwise: number): number {
  const text = flags[name];
  return text === undefined ? otherwise : Number(text);
}

function run(
  instance: PlanInstance,
  flags: Readonly<Record<string, unknown>> = {},
): Outcome<v.InferInput<typeof output>> {
  const seed = whole(flags, 'seed', 1);
  const iterations = whole(flags, 'iterations', 0);
  const seconds = whole(flags, 'seconds', Infinity);
  if (!Number.isSafeInteger(seed)) return refuse('not-a-count', '--seed must be a whole number.');
  if (!Number.isSafeInteger(iterations) || iterations < 0)
    return refuse('not-a-count', '--iterations must be a whole number, 1 or more.');
  if (!(seconds > 0)) return refuse('out-of-range', '--seconds must be above 0.');
  const until = performance.now() + 1000 * seconds;
  const shouldStop = (): boolean => performance.now() > until;
  const effort = iterations > 0 ? { iterations } : {};
  const made = makePlan(instance, { seed, shouldStop, ...effort });
  const { plan, chance } = made;
  const short = chance.packed < instance.rules.chanceAtLeast;
  const explain = plan.leftOut.length > 0 || short;
  const conflict = plan.leftOut.length > 0 ? conflictOf(instance, { seed, shouldStop }) : undefined;
  const repairs = explain ? repairsFor(instance, made, { seed, shouldStop }) : [];
  const { lowerBound, gap, proven, stopped, pairings } = made;
  const moved = movedSince(instance, plan);
  return given({
    lanes: lanesOf(instance, plan),
    leftOut: [...plan.leftOut],
    finish: clock(plan.finish),
    packedBy: clock(plan.finish + instance.rules.packMinutes),
    cost: plan.cost,
    costOf: plan.parts,
    ...{ lowerBound, gap, proven, seed, stopped, pairings },
    iterations: made.iterations,
    chance: {
      ...{ packed: chance.packed, error: chance.error, everyone: chance.everyone },
      interval: [...chance.interval],
      finish: chance.finish.map(clock) as [string, string, string],
      ...{ asked: instance.rules.chanceAtLeast, draws: chance.draws },
    },
    conflict: conflict
      ? { rules: [...sayConflict(instance, conflict)], proven: conflict.proven }
      : null,
    repairs: repairs.map((tried) => ({
      words: sayTried(instance, tried),
      ...{ chance: tried.chance, finish: clock(tried.finish) },
    })),
    moved: { otherPair: [...moved.otherPair], later: [...moved.later] },
  });
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

function table(answer: Answer): string {
  const rows = answer.lanes.flatMap((lane, k) =>
    lane.map(({ start, end, person, swabber, recorder, prepare }) => [
      ...[String(k + 1), start, end, person, swabber, recorder],
      prepare === null ? '' : `prepare at ${prepare}`,
    ]),
  );
  const all = [['lane', 'start', 'end', 'person', 'swabs', 'records', ''], ...rows];
  const widths = all[0]?.map((_, c) => Math.max(...all.map((row) => row[c]?.length ?? 0))) ?? [];
  const lines = all.map((row) =>
    row
      .map((cell, c) => cell.padEnd(widths[c] ?? 0))
      .join('  ')
      .trimEnd(),
  );
  const { chance, gap, proven, conflict } = answer;
  return [
    ...lines,
    '',
    `Last visit ends ${answer.finish}, packed by ${answer.packedBy}.`,
    `In time on ${percent(chance.packed)} of days (error ${percent(chance.error)}); asked for ${percent(chance.asked)}.`,
    proven
      ? 'No plan is better: proved.'
      : `No plan is better by more than ${percent(gap)} of the cost.`,
    ...(answer.leftOut.length > 0 ? [`Left to another day: ${answer.leftOut.join(', ')}.`] : []),
    ...(conflict
      ? [
          '',
          'These cannot all be kept if everybody is to be visited:',
          ...conflict.rules.map((r) => `  ${r}`),
        ]
      : []),
    ...(answer.repairs.length > 0
      ? [
          '',
          'Any one of these would be enough:',
          ...answer.repairs.map(({ words }) => `  ${words}`),
        ]
      : []),
  ].join('\n');
}

export const { definition, register } = statisticCommand({
  name: 'plan',
  description:
    'The order of a round: who is swabbed when and by whom, how good that is at best, and the chance\nthat it can be kept. Where it cannot, which rules conflict and what would be enough to change.',
  input: planInstance,
  output,
  example,
  run,
  table,
  flags: [
    ['--seed <number>', 'the same seed and effort give the same plan (1 unless given)'],
    ['--iterations <number>', 'effort of the search (by the size of the round unless given)'],
    ['--seconds <number>', 'stop after so long with the best so far'],
  ],
  notes:
    'Exit code 0: everybody is planned, with the chance asked for. 3: somebody is left to another day.\n4: everybody is planned, with less chance than asked for. 2: the input is not right.',
  exitCode: ({ leftOut, chance }) =>
    leftOut.length > 0 ? 3 : chance.packed < chance.asked ? 4 : 0,
});
