import type { Home } from '../care/home.ts';
import type { PersonId, StaffId } from '../care/ids.ts';
import { allow } from '../care/refusal.ts';
import { memberOf } from '../care/staff/member.ts';
import { staffKnows } from './describe.ts';
import type { Outcome } from './doing.ts';

export interface Knows {
  readonly staff: StaffId;
  readonly person: PersonId;
  readonly knows: boolean;
}

/** Who knows whom by sight, several at once; what is on record already is not written again. */
export function setKnows(home: Home, all: readonly Knows[]): Outcome {
  return allow(
    all
      .filter(({ staff, person, knows }) => memberOf(home, staff).knows.has(person) !== knows)
      .flatMap((each) => {
        const outcome = staffKnows(home, each);
        return outcome.ok ? outcome.value : [];
      }),
  );
}
