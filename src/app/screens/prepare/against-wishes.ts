import type { Against } from '../../../care/people/helpers.ts';
import { againstWishes } from '../../../care/people/helpers.ts';
import type { Prepare } from './use-prepare.ts';

/** What the pairs of the draft do not meet, person by person: those of a used plan, else the round's own. */
export function againstIn({ draft, places, desk }: Prepare): readonly Against[] {
  const { swabber, recorder, timed } = draft;
  return places.flatMap(({ person }) => {
    const visit = timed?.find((each) => each.person === person);
    const pair = visit ?? (swabber === '' || recorder === '' ? undefined : { swabber, recorder });
    return pair === undefined ? [] : againstWishes(desk.home, person, pair);
  });
}
