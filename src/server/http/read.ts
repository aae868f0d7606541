import * as v from 'valibot';
import { type Answer, give, turn } from '../answer.ts';

/** A body or parameter of the shape a handler wants, or where it is wrong. Never says what was sent. */
export function read<T>(schema: v.GenericSchema<unknown, T>, given: unknown): Answer<T> {
  const parsed = v.safeParse(schema, given);
  if (parsed.success) return give(parsed.output);
  const [issue] = parsed.issues;
  return turn({
    reason: 'bad-request',
    where: v.getDotPath(issue) ?? 'body',
    what: `expected ${issue.expected ?? issue.type}`,
  });
}
