import * as v from 'valibot';
import { cohorts } from '../../outbreaks/cohort.ts';
import { unitsApart } from '../../policy/policy.ts';
import { crossCheck } from './cross-check.ts';

const id = v.pipe(v.string(), v.minLength(1, 'must not be empty'), v.maxLength(80));
const minutes = (least: number, most: number) =>
  v.pipe(
    v.number(),
    v.integer('must be a whole number of minutes'),
    v.minValue(least, `must be ${least} or more`),
    v.maxValue(most, `must be ${most} or less`),
  );
const weight = v.pipe(
  v.number(),
  v.integer('must be a whole number'),
  v.minValue(0, 'must be 0 or more'),
  v.maxValue(1000, 'must be 1000 or less'),
);
const count = v.pipe(
  v.number(),
  v.integer('must be a whole number'),
  v.minValue(0, 'must be 0 or more'),
);
const share = v.pipe(
  v.number(),
  v.minValue(0, 'must be 0 or more'),
  v.maxValue(1, 'must be 1 or less'),
);

/** A wall time on the day of the round; inside the program, whole minutes after midnight. */
const time = v.pipe(
  v.string('must be a time such as "07:30"'),
  v.regex(/^(?:(?:[01]\d|2[0-3]):[0-5]\d|24:00)$/, 'must be a time such as "07:30"'),
  v.transform((text) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3))),
);
const span = v.strictObject({ from: time, until: time });

export const MOST_PEOPLE = 120;
export const MOST_STAFF = 24;

/** How long a whole visit takes, gloves to gloves: a mean and a standard deviation, in minutes. */
const duration = v.strictObject({
  mean: v.pipe(v.number(), v.gtValue(0, 'must be above 0'), v.maxValue(240, 'must be 240 or less')),
  sd: v.optional(v.pipe(v.number(), v.minValue(0, 'must be 0 or more'), v.maxValue(120)), 0),
});

const person = v.strictObject({
  id,
  name: v.optional(v.string()),
  cohort: v.optional(v.picklist(cohorts), 'no-known-exposure'),
  unit: v.optional(v.string(), ''),
  room: v.optional(v.string(), ''),
  /** When this person may be visited; the whole visit lies in one of them. None: at any time. */
  windows: v.optional(v.array(span), []),
  meals: v.optional(v.array(span), []),
  /** Whether the throat is swabbed: then nothing by mouth for a while before. */
  throat: v.optional(v.boolean(), true),
  /** Agreed with the doctor, so many minutes ahead; it can be given from `from` on. */
  preparation: v.optional(v.strictObject({ leadMinutes: minutes(0, 720), from: v.optional(time) })),
  preferred: v.optional(v.array(id), []),
  excluded: v.optional(v.array(id), []),
  swabberGender: v.optional(v.string()),
  minutes: duration,
  /** How often a visit ends with a stop, and is then tried once more. */
  stopChance: v.optional(share, 0),
  /** How much it matters that this person is not left to another day. */
  weight: v.optional(v.pipe(weight, v.minValue(1, 'must be 1 or more')), 1),
  /** No sooner than this: a second try, or somebody who asked for later. */
  notBefore: v.optional(time),
});

const member = v.strictObject({
  id,
  name: v.optional(v.string()),
  gender: v.optional(v.string()),
  shift: span,
  /** Breaks and other duties. */
  away: v.optional(v.array(span), []),
  maySwab: v.boolean(),
  mayRecord: v.boolean(),
});

/** A visit that has been made, or is being made, today. */
const done = v.strictObject({
  person: id,
  swabber: id,
  recorder: id,
  cohort: v.optional(v.picklist(cohorts), 'no-known-exposure'),
  unit: v.optional(v.string(), ''),
  room: v.optional(v.string(), ''),
  from: time,
  until: time,
});

/** A visit of a plan that people have seen already. */
const promised = v.strictObject({ person: id, swabber: id, recorder: id, start: time });

const planningWeights = v.strictObject({
  /** Times a person's own weight, for leaving them to another day. */
  leftOut: v.optional(count, 10_000),
  /** A wish of a person's that is not met. */
  preference: v.optional(weight, 60),
  /** A minute of difference between the work of the busiest and the least busy pair. */
  load: v.optional(weight, 2),
  /** A minute until everything is finished. */
  finish: v.optional(weight, 4),
  /** A minute of walking. */
  walk: v.optional(weight, 1),
  /** In a plan made anew: a person who gets another pair, or another place in the order. */
  moved: v.optional(weight, 40),
  /** In a plan made anew: a minute later than people were told. */
  later: v.optional(weight, 2),
});

const rules = v.strictObject({
  /** Pairs at work side by side, at most. */
  pairs: v.pipe(
    v.number(),
    v.integer('must be a whole number'),
    v.minValue(1, 'must be 1 or more'),
    v.maxValue(6, 'must be 6 or less'),
  ),
  /** Whether a pair may become another in the middle of the round. */
  pairsMayChange: v.optional(v.boolean(), false),
  /** Staff who are not to work together. */
  apart: v.optional(v.array(v.tuple([id, id])), []),
  mealGapMinutes: v.optional(minutes(0, 240), 30),
  /** Gloves and apron, between one person and the next. */
  changeMinutes: v.optional(minutes(0, 60), 2),
  /** A full change of PPE, between cohorts. */
  fullChangeMinutes: v.optional(minutes(0, 120), 10),
  /** In an outbreak: 'full-change' between units, or 'own-pair' for each. */
  unitsApart: v.optional(v.picklist(unitsApart), 'no'),
  walkMinutes: v.optional(v.strictObject({ room: minutes(0, 30), unit: minutes(0, 60) }), {
    room: 0,
    unit: 1,
  }),
  secondTryAfterMinutes: v.optional(minutes(0, 720), 30),
  packMinutes: v.optional(minutes(0, 480), 20),
  /** When the courier comes; several times if need be. */
  collections: v.pipe(v.array(time), v.minLength(1, 'needs at least one time')),
  /** A tube waits no longer than this for its courier. */
  storageMinutes: v.optional(minutes(1, 20_160)),
  /** Registering begins when all is packed, and is over by `by`. */
  register: v.optional(v.strictObject({ minutesEach: minutes(0, 60), by: time })),
  /** The chance with which everything has to be packed in time. */
  chanceAtLeast: v.optional(share, 0.95),
});

const supplies = v.strictObject({
  kits: v.optional(count),
  glovePairs: v.optional(count),
  aprons: v.optional(count),
  masks: v.optional(count),
  /** What each of the pair uses up with one person. */
  glovePairsEach: v.optional(count, 1),
  apronsEach: v.optional(count, 1),
});

/** Everything that planning a round has to know, in the words of the trade. */
export const planInstance = v.pipe(
  v.strictObject({
    /** The plan begins no sooner; for a plan made anew, this is now. */
    from: time,
    people: v.pipe(
      v.array(person),
      v.minLength(1, 'has nobody in it: a round needs at least one person'),
      v.maxLength(MOST_PEOPLE, `has more than ${MOST_PEOPLE} people: make several rounds of it`),
    ),
    staff: v.pipe(
      v.array(member),
      v.minLength(2, 'needs at least two: a swabber and a recorder'),
      v.maxLength(MOST_STAFF, `has more than ${MOST_STAFF} staff`),
    ),
    rules,
    supplies: v.optional(supplies, {}),
    weights: v.optional(planningWeights, {}),
    done: v.optional(v.array(done), []),
    promised: v.optional(v.array(promised), []),
  }),
  v.rawCheck(({ dataset, addIssue }) => {
    if (!dataset.typed) return;
    for (const { at, message } of crossCheck(dataset.value)) {
      addIssue({
        message,
        path: at.map((key) => ({
          ...{ type: 'unknown' as const, origin: 'value' as const },
          ...{ input: dataset.value, key, value: undefined },
        })) as unknown as [v.IssuePathItem],
      });
    }
  }),
);

export type PlanInstance = v.InferOutput<typeof planInstance>;
export type PlanInstanceInput = v.InferInput<typeof planInstance>;
export type PlanPerson = PlanInstance['people'][number];
export type PlanMember = PlanInstance['staff'][number];
export type PlanRules = PlanInstance['rules'];
