import type { Home } from '../home.ts';
import type { PersonId } from '../ids.ts';
import { planOf } from '../support/plan.ts';
import { alikeTo, personOf } from './person.ts';

export type IdentityWay = 'birthday' | 'face';

/**
 * How this person is identified. As their plan says, but by face where somebody here has nearly the
 * same name and the same day of birth: both would answer alike, and no birthday tells them apart.
 * Without a photo it stays the birthday, and the screens ask for a photo.
 */
export function identityWay(home: Home, id: PersonId): IdentityWay {
  const { identity } = planOf(home, id);
  if (identity === 'face') return 'face';
  const person = personOf(home, id);
  const twins = alikeTo(home, person).some(
    ({ why }) => why.includes('same-birthday') && why.length > 1,
  );
  return twins && person.photo !== undefined ? 'face' : 'birthday';
}
