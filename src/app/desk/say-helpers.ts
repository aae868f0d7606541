import type { StaffId } from '../../care/ids.ts';
import type { SwabberWish } from '../../care/people/facts.ts';
import type { Against } from '../../care/people/helpers.ts';
import type { Words } from '../words/en.ts';
import type { AllWords } from '../words/en-all.ts';
import type { Names } from './names.ts';

interface Wishes {
  readonly wanted: readonly StaffId[];
  readonly unwanted: readonly StaffId[];
  readonly swabber?: SwabberWish | undefined;
}

/** Whom somebody wants for a swab and whom not, in a line or two. */
export function sayHelpers(
  { wanted, unwanted, swabber }: Wishes,
  { helpers: say, wishes }: AllWords,
  names: Names,
): string {
  const said = [
    ...(swabber === undefined ? [] : [say.swabber(wishes.swabbers[swabber])]),
    ...(wanted.length === 0 ? [] : [say.wants(wanted.map((id) => names.staff(id)))]),
    ...(unwanted.length === 0 ? [] : [say.unwanted(unwanted.map((id) => names.staff(id)))]),
  ];
  return said.length === 0 ? say.anybody : said.join(' ');
}

/** How a pair goes against a wish, and whom to ask. */
export function sayAgainst(each: Against, { wishes: say }: Words, names: Names): string {
  const who = names.person(each.person);
  switch (each.against) {
    case 'unwanted': {
      const staff = names.staff(each.staff);
      return `${say.unwanted(who, staff)} ${say.ask(who, staff)}`;
    }
    case 'swabber': {
      const asked = say.swabber(who, say.swabbers[each.wish]);
      return `${asked} ${say.ask(who, names.staff(each.staff))}`;
    }
    case 'wanted':
      return say.wanted(
        who,
        each.wanted.map((id) => names.staff(id)),
      );
  }
}
