import * as v from 'valibot';
import { day } from '../time.ts';
import { authorities, conclusions, parts, starts } from './facts.ts';

const line = v.pipe(v.string(), v.minLength(1), v.maxLength(500));

/** On which paths something is asked. Every list that is given must hold; none given means always. */
const when = v.strictObject({
  start: v.exactOptional(v.array(v.picklist(starts))),
  conclusion: v.exactOptional(v.array(v.picklist(conclusions))),
  authority: v.exactOptional(v.array(v.picklist(authorities))),
});

/**
 * The demands of one law on a decision record, as data: what is asked, in which order, on which path,
 * and by which section. Nothing in the program is welded to one law.
 */
export const rulePack = v.strictObject({
  pack: v.pipe(v.string(), v.regex(/^[a-z0-9-]{3,60}$/)),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
  title: line,
  jurisdiction: line,
  source: line,
  issued: day,
  /** Where a record begins. Those without conclusions go straight to whose word it is. */
  starts: v.pipe(
    v.array(
      v.strictObject({
        start: v.picklist(starts),
        section: line,
        conclusions: v.array(v.picklist(conclusions)),
        authorities: v.array(v.picklist(authorities)),
      }),
    ),
    v.minLength(1),
  ),
  conclusions: v.array(
    v.strictObject({
      conclusion: v.picklist(conclusions),
      section: line,
      /** What the answers on the four limbs must say for this conclusion to stand beside them. */
      limbs: v.exactOptional(v.picklist(['all-can', 'some-cannot'])),
      authorities: v.pipe(v.array(v.picklist(authorities)), v.minLength(1)),
    }),
  ),
  questions: v.pipe(
    v.array(
      v.strictObject({ part: v.picklist(parts), section: line, when: v.exactOptional(when) }),
    ),
    v.minLength(1),
  ),
});
export type RulePack = v.InferOutput<typeof rulePack>;
export type PackQuestion = RulePack['questions'][number];
