import * as v from 'valibot';

/** One rung: a few minutes, one small thing, the same words every time. */
export const step = v.strictObject({
  step: v.pipe(v.string(), v.regex(/^[a-z0-9-]{2,40}$/)),
  title: v.pipe(v.string(), v.minLength(1), v.maxLength(120)),
  minutes: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(60)),
});

/** The ladder of small steps, easiest first. The service edits it in its own policy file. */
export const ladder = v.pipe(
  v.array(step),
  v.minLength(2),
  v.maxLength(15),
  v.check(
    (steps) => new Set(steps.map((each) => each.step)).size === steps.length,
    'names a step twice',
  ),
);
export type Ladder = v.InferOutput<typeof ladder>;
