import type { Home } from '../care/home.ts';
import type { PersonId, StaffId } from '../care/ids.ts';
import type { SwabberWish, WishTeller } from '../care/people/facts.ts';
import { helperWishes, softens } from '../care/people/helpers.ts';
import { allow, refuse } from '../care/refusal.ts';
import type { WorksAs } from '../care/staff/facts.ts';
import { memberOf } from '../care/staff/member.ts';
import { ranks } from '../care/staff/rights.ts';
import { standingFor } from './describe.ts';
import type { Doing, Outcome } from './doing.ts';

export interface HelpersSaid {
  readonly person: PersonId;
  readonly wanted: readonly StaffId[];
  readonly unwanted: readonly StaffId[];
  readonly swabber?: SwabberWish;
  readonly told: WishTeller;
  readonly reason: string;
}

const MOST = 500;
const same = (one: readonly string[], other: readonly string[]): boolean =>
  JSON.stringify([...one].sort()) === JSON.stringify([...other].sort());

/**
 * Whom a person wants for a swab, and whom not. Anybody who hears a wish writes it down. To take back an
 * exclusion, or a wish for a woman or a man, takes a senior, and never the colleague it is about.
 */
export function setHelpers(home: Home, said: HelpersSaid, doing: Doing): Outcome {
  const { person, wanted, unwanted, swabber, told } = said;
  const reason = said.reason.trim().normalize('NFC');
  const both = wanted.find((staff) => unwanted.includes(staff));
  if (both !== undefined) return refuse({ reason: 'wanted-and-not', staff: both });
  if (reason.length > MOST) return refuse({ reason: 'too-long', field: 'reason', most: MOST });
  const now = helperWishes(home, person);
  const lifted = now.unwanted.filter((staff) => !unwanted.includes(staff));
  if (softens(now, said) && !ranks(home, doing.by, 'senior'))
    return refuse({ reason: 'needs-senior' });
  if (lifted.includes(doing.by)) return refuse({ reason: 'not-theirs-to-say' });
  const unchanged =
    same(now.wanted, wanted) && same(now.unwanted, unwanted) && now.swabber === swabber;
  const nothing = now.told === undefined && [...wanted, ...unwanted].length === 0;
  if (unchanged && (nothing || (now.told === told && now.reason === reason))) return allow([]);
  return allow([
    {
      kind: 'person.helpers',
      data: {
        ...{ person, wanted: [...wanted], unwanted: [...unwanted], told },
        ...(swabber !== undefined && { swabber }),
        ...standingFor(home, ['person', person], { kind: 'person.helpers' }),
      },
      private: { reason },
    },
  ]);
}

/** What a colleague works as, for those who ask for a woman or a man. Theirs alone to say. */
export function setWorksAs(
  home: Home,
  { staff, as }: { readonly staff: StaffId; readonly as: WorksAs },
  doing: Doing,
): Outcome {
  if (doing.by !== staff) return refuse({ reason: 'not-theirs-to-say' });
  if (memberOf(home, staff).worksAs === as) return allow([]);
  return allow([
    {
      kind: 'staff.works-as',
      data: { staff, ...standingFor(home, ['staff', staff], { kind: 'staff.works-as' }) },
      private: { as },
    },
  ]);
}
