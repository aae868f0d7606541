import type { Home } from '../home.ts';
import type { PersonId } from '../ids.ts';
import { policyOn } from '../policy/in-force.ts';
import type { TestKind } from '../policy/policy.ts';
import type { DueLine } from '../rounds/due.ts';
import { dueOn } from '../rounds/due.ts';
import type { Readiness } from '../rounds/readiness.ts';
import { readinessOf } from '../rounds/readiness.ts';
import type { Day, Instant } from '../time.ts';

/** How one person stands to one kind of test on a day. */
export interface PersonDue {
  readonly test: TestKind;
  /** Undefined where no rule makes them due. */
  readonly line: DueLine | undefined;
  readonly readiness: Readiness;
}

/** For each kind of test in the policy in force: is this person due, why, and what is missing. */
export const dueFor = (home: Home, person: PersonId, on: Day, now?: Instant): PersonDue[] =>
  policyOn(home, on).policy.tests.map((test) => ({
    test,
    line: dueOn(home, { on, test: test.id, ...(now !== undefined && { now }) }).find(
      (line) => line.person.id === person,
    ),
    readiness: readinessOf(home, person, { test: test.id, on }),
  }));
