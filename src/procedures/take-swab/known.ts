import type { Pair } from '../../care/custody/turn.ts';
import type { Home } from '../../care/home.ts';
import type { PersonId, StaffId } from '../../care/ids.ts';
import { policyOn } from '../../care/policy/in-force.ts';
import type { Refusal } from '../../care/refusal.ts';
import { memberOf, workingHere } from '../../care/staff/member.ts';
import { planOf } from '../../care/support/plan.ts';
import type { Day } from '../../care/time.ts';

/** Those of the pair, and a colleague who came to help, who know this person by sight. */
const knownTo = (
  home: Home,
  person: PersonId,
  staff: readonly (StaffId | undefined)[],
): StaffId[] =>
  [...new Set(staff.flatMap((id) => id ?? []))].filter((id) =>
    memberOf(home, id).knows.has(person),
  );

/** A person who cannot say who they are is named aloud by as many who know them as policy asks. */
export function tooFewKnow(
  home: Home,
  who: Pair & { person: PersonId; also?: StaffId | undefined },
  on: Day,
): Refusal | undefined {
  if (planOf(home, who.person).identity !== 'face') return undefined;
  const needed = policyOn(home, on).policy.technique.knownByAtLeast?.value ?? 1;
  const helper = who.also !== undefined && workingHere(memberOf(home, who.also), on);
  const staff = [who.swabber, who.recorder, ...(helper ? [who.also] : [])];
  const knowing = knownTo(home, who.person, staff).length;
  if (knowing >= needed) return undefined;
  return { reason: knowing === 0 ? 'nobody-knows-them' : 'two-must-know', person: who.person };
}
