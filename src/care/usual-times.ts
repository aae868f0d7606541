import * as v from 'valibot';

// What is usual on a day of the week: hours, breaks, outings, meals. Wall times in the service's zone.

const wallTimeText = v.pipe(v.string(), v.regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/));

/** A part of one day, `HH:mm` to `HH:mm`, the end later than the beginning. */
export const wallSpan = v.pipe(
  v.strictObject({ from: wallTimeText, until: wallTimeText }),
  v.check(({ from, until }) => from < until, 'ends before it begins'),
);
export const wallSpans = v.pipe(v.array(wallSpan), v.maxLength(6));

/** Days of the week as ISO 8601 counts them: 1 is Monday, 7 is Sunday. */
export const weekdays = v.pipe(
  v.array(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(7))),
  v.maxLength(7),
);

/** The same every week: on these days, from then until then. */
export const weekly = v.pipe(
  v.strictObject({ weekdays, from: wallTimeText, until: wallTimeText }),
  v.check(({ from, until }) => from < until, 'ends before it begins'),
);

export type WallSpan = v.InferOutput<typeof wallSpan>;
export type Weekly = v.InferOutput<typeof weekly>;

/** Whether a pair of times can be kept: both there, and the end later. */
export const isSpan = (span: { readonly from: string; readonly until: string }): span is WallSpan =>
  v.is(wallSpan, span);
