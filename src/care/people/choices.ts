import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Home } from '../home.ts';
import type { PersonId } from '../ids.ts';
import type { Person } from './person.ts';
import { housemates, namesakes, personOf } from './person.ts';

/** How many people stand in the blind choice, the right one among them. */
const CHOICES = 4;
/** Up to so many where there are more people who may be taken for this one. */
const MOST_CHOICES = 6;

/**
 * The people among whom the recorder picks the birthday heard, or the face seen. Namesakes always
 * stand among them; the rest and the order are drawn from the turn's id, so that the same turn shows
 * the same choice on every tablet and the next turn another. No two look the same in what is shown.
 */
export function identityChoices(
  home: Home,
  id: PersonId,
  { way, turn }: { readonly way: 'birthday' | 'face'; readonly turn: string },
): Person[] {
  const person = personOf(home, id);
  const shown = (each: Person) => (way === 'birthday' ? each.born : each.photo);
  const key = (each: Person) => bytesToHex(sha256(utf8ToBytes(`${turn}/${each.id}`)));
  const drawn = (people: Person[]) => people.sort((a, b) => (key(a) < key(b) ? -1 : 1));
  const near = namesakes(home, person);
  const rest = drawn(housemates(home).filter((each) => each.id !== id && !near.includes(each)));
  const picked = new Map([[shown(person), person]]);
  for (const each of [...near, ...rest]) {
    if (picked.size >= (near.includes(each) ? MOST_CHOICES : CHOICES)) break;
    if (shown(each) !== undefined && !picked.has(shown(each))) picked.set(shown(each), each);
  }
  return drawn([...picked.values()]);
}
