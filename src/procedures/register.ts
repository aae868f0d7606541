import type { FactOf } from '../care/catalogue.ts';
import { testsWithCode } from '../care/custody/code.ts';
import { testOf } from '../care/custody/test.ts';
import type { Home } from '../care/home.ts';
import { factsIn, standing } from '../care/home.ts';
import type { StaffId, TestId } from '../care/ids.ts';
import type { Code } from '../care/kind.ts';
import type { FindingKind } from '../care/quality/finding.ts';
import { heldBy } from '../care/quality/held.ts';
import { allow, refuse } from '../care/refusal.ts';
import { registrationOf } from '../care/results/outcome.ts';
import { memberOf, workingHere } from '../care/staff/member.ts';
import type { Instant } from '../care/time.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';

/** The reporting body took the test and gave a reference back. The same one twice is refused. */
export function register(
  home: Home,
  {
    test: id,
    reference: given,
    amend,
  }: { readonly test: TestId; readonly reference: string; readonly amend?: boolean },
  doing: Doing,
): Outcome {
  const reference = given.trim();
  if (reference === '') return refuse({ reason: 'empty', field: 'reference' });
  if (reference.length > 60) return refuse({ reason: 'too-long', field: 'reference', most: 60 });
  const test = testOf(home, id);
  if (test.packed.length === 0) return refuse({ reason: 'not-packed', test: id });
  // A clash of references is put right by registering again: that must not wait for itself.
  const held = heldBy(home, id).find(({ kind }) => !aboutReferences.has(kind));
  if (held !== undefined) return refuse({ reason: 'held-by-finding', finding: held.id });
  if (testsWithCode(home, reference as Code).size > 0)
    return refuse({ reason: 'reference-is-code', reference });
  const other = testWithReference(home, reference, id);
  if (other !== undefined) return refuse({ reason: 'reference-used', reference, test: other });
  const { registered } = registrationOf(home, id);
  if (registered !== undefined && amend !== true) {
    return refuse({ reason: 'already-registered', reference: registered.data.reference });
  }
  const before = standing(factsIn(home, 'test', id), 'test.registered').map((fact) => fact.id);
  return allow([
    {
      kind: 'test.registered',
      data: {
        test: id,
        reference,
        on: today(home, doing),
        ...(before.length > 0 && { replaces: before }),
      },
    },
  ]);
}

const aboutReferences = new Set<FindingKind>(['registered-twice', 'reference-on-two']);

function testWithReference(home: Home, reference: string, not: TestId): TestId | undefined {
  return standing(factsIn(home, 'reference', reference), 'test.registered')
    .map((fact) => fact.data.test)
    .find(
      (test) => test !== not && registrationOf(home, test).registered?.data.reference === reference,
    );
}

/** It could not be registered now: why, who tries again, and when. */
export function registrationFailed(
  home: Home,
  failed: {
    readonly test: TestId;
    readonly why: FactOf<'registration.failed'>['data']['why'];
    readonly nextTry: Instant;
    readonly who: StaffId;
  },
  doing: Doing,
): Outcome {
  if (failed.nextTry <= doing.now) return refuse({ reason: 'in-the-past', field: 'nextTry' });
  if (!workingHere(memberOf(home, failed.who), today(home, doing)))
    return refuse({ reason: 'not-working-here', staff: failed.who });
  const before = registrationOf(home, failed.test).failures.map((fact) => fact.id);
  return allow([
    {
      kind: 'registration.failed',
      data: { ...failed, ...(before.length > 0 && { replaces: before }) },
    },
  ]);
}
