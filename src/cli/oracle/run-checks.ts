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
  return { size: tolerance, relative, ...(printed !== undefined && { printed: Number(printed) }) };
}

function judge(
  check: Check,
  adapters: Adapters,
  lookup: (id: string) => Check | undefined,
): Verdict {
  const adapter = adapters[check.fn];
  if (!adapter) return { check, differences: [], problem: `there is no function "${check.fn}"` };
  try {
    const got = adapter(new Input(check.input), { lookup });
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
