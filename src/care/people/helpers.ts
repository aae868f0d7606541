import type { Fact, FactOf } from '../catalogue.ts';
import type { Pair } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import { concluding, standing } from '../home.ts';
import type { PersonId, StaffId } from '../ids.ts';
import { memberOf } from '../staff/member.ts';
import type { SwabberWish, WishTeller } from './facts.ts';
import { housemates } from './person.ts';

/** By whom somebody wants to be helped with a swab. */
export interface HelperWishes {
  /** A preference: kept where it can be. Never somebody who is not wanted. */
  readonly wanted: readonly StaffId[];
  /** No plan sends these. */
  readonly unwanted: readonly StaffId[];
  /** No plan has anybody else swab. */
  readonly swabber: SwabberWish | undefined;
  /** Who told of it, and why; undefined where there is no wish on record. */
  readonly told: WishTeller | undefined;
  readonly reason: string;
}

export const helperWishes: (home: Home, person: PersonId) => HelperWishes = concluding(
  'person',
  concludeWishes,
);

/** Where two stand that did not know of each other, every exclusion in either of them counts. */
function concludeWishes(facts: readonly Fact[]): HelperWishes {
  const stand = standing(facts, 'person.helpers');
  const last = stand.at(-1);
  const unwanted = [...new Set(stand.flatMap(({ data }) => data.unwanted))];
  return {
    wanted: last?.data.wanted.filter((staff) => !unwanted.includes(staff)) ?? [],
    unwanted,
    swabber: stand.findLast(({ data }) => data.swabber !== undefined)?.data.swabber,
    told: last?.data.told,
    reason: last?.private?.reason ?? '',
  };
}

/** Whether anybody here asks for a woman or a man: only then are colleagues asked what they work as. */
export const somebodyAsks = (home: Home): boolean =>
  housemates(home).some(({ id }) => helperWishes(home, id).swabber !== undefined);

/** How a pair goes against what a person wishes. */
export type Against =
  | { readonly against: 'unwanted'; readonly person: PersonId; readonly staff: StaffId }
  | {
      readonly against: 'swabber';
      readonly person: PersonId;
      readonly staff: StaffId;
      readonly wish: SwabberWish;
    }
  | {
      readonly against: 'wanted';
      readonly person: PersonId;
      readonly wanted: readonly StaffId[];
    };

/**
 * What of a person's wishes a pair does not meet, the weightiest first. A swabber who has not said what
 * they work as does not meet a wish for a woman or a man: nobody guesses.
 */
export function againstWishes(home: Home, person: PersonId, pair: Pair): readonly Against[] {
  const { unwanted, swabber: wish, wanted } = helperWishes(home, person);
  const two = [...new Set([pair.swabber, pair.recorder])];
  const { swabber: staff } = pair;
  const met = two.some((each) => wanted.includes(each));
  return [
    ...two
      .filter((each) => unwanted.includes(each))
      .map((each) => ({ against: 'unwanted' as const, person, staff: each })),
    ...(wish === undefined || memberOf(home, staff).worksAs === wish
      ? []
      : [{ against: 'swabber' as const, person, staff, wish }]),
    ...(wanted.length === 0 || met ? [] : [{ against: 'wanted' as const, person, wanted }]),
  ];
}

interface Binding {
  readonly unwanted: readonly StaffId[];
  readonly swabber?: SwabberWish | undefined;
}

/** Whether what binds a plan is less than before: an exclusion taken back, or a wish for a woman or a man. */
export const softens = (before: Binding, now: Binding): boolean =>
  before.unwanted.some((staff) => !now.unwanted.includes(staff)) ||
  (before.swabber !== undefined && before.swabber !== now.swabber);

/** Whether an entry takes back an exclusion, or a wish for a woman or a man, of the ones it replaces. */
export const takesBack = (home: Home, { data }: FactOf<'person.helpers'>): boolean =>
  (data.replaces ?? []).some((id) => {
    const before = home.known.get(id);
    return before?.kind === 'person.helpers' && softens(before.data, data);
  });
