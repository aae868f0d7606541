import type { Adapters, Check } from './check.ts';
import { compare, type Difference, type Tolerance } from './compare.ts';
import { Input } from './input.ts';

export interface Verdict {
  readonly check: Check;
  /** Empty when the check passed. */
  readonly differences: readonly Difference[];
  /** Why the check could not be run: an unknown function, an input that cannot be read. */
  readonly problem?: string;
}

/** Tolerances are absolute unless the note or the source says "relative tolerance". */
function toleranceOf({ tolerance, note = '', source = '' }: Check): Tolerance {
  const relative = /relative tolerance|tolerance\s+(?:is\s+)?relative/i.test(`${note} ${source}`);
  const printed = /published \w+ to ([\d.]+(?:e-?\d+)?)/i.exec(note)?.[1];
  return {
    size: tolerance,
    relative,
    ...(printed !== undefined && { printed: Number(printed) }),
  };
}

/** What is wrong with a check itself; it was written by others, so nothing about it is taken for granted. */
function faultOf(
  { fn, expected, tolerance }: Partial<Check>,
  adapters: Adapters,
): string | undefined {
  if (typeof fn !== 'string')
    return 'the check names no function: "fn" is needed, the name of one as a text';
  if (!Object.hasOwn(adapters, fn)) return `there is no function "${fn}"`;
  if (expected === undefined)
    return 'the check has no "expected": an object of figures, or null where there is no answer';
  if (typeof tolerance !== 'number' || !(tolerance >= 0))
    return `the tolerance ${JSON.stringify(tolerance)} is not a number of 0 or more`;
  return undefined;
}

function judge(
  check: Check,
  adapters: Adapters,
  lookup: (id: string) => Check | undefined,
): Verdict {
  const problem = faultOf(check, adapters);
  if (problem !== undefined) return { check, differences: [], problem };
  try {
    const got = adapters[check.fn]?.(new Input(check.input), { lookup });
    return { check, differences: compare(check.expected, got, toleranceOf(check)) };
  } catch (error) {
    return {
      check,
      differences: [],
      problem: error instanceof Error ? error.message : String(error),
    };
  }
}

/** Judges every check. `others` are checks that may be referred to by id. */
export function runChecks(
  checks: readonly Check[],
  adapters: Adapters,
  others: readonly Check[] = [],
): readonly Verdict[] {
  const byId = new Map([...others, ...checks].map((c) => [c.id, c]));
  return checks.map((check) => judge(check, adapters, (id) => byId.get(id)));
}

export const passed = (verdict: Verdict): boolean =>
  verdict.problem === undefined && verdict.differences.length === 0;
