import type { JSX } from 'preact';
import { momentOf } from '../../../care/time.ts';
import { namesIn } from '../../desk/names.ts';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { WishNotice } from '../parts/wish-notice.tsx';
import { againstIn } from './against-wishes.ts';
import { planOf } from './draft.ts';
import { KitsPart } from './kits-part.tsx';
import { PpePart } from './ppe-part.tsx';
import { ReadyLine } from './ready-line.tsx';
import type { StepProps } from './step-when.tsx';
import { packBy } from './wrong.ts';

/** Everything that is told before the round is kept: people, what is missing, kits, PPE, who is left off. */
export function StepCheck({ prepare }: StepProps): JSX.Element {
  const words = useAllWords();
  const say = words.prepare;
  const { draft, places, desk } = prepare;
  const { home } = desk;
  const names = namesIn(home, words.refusals.somebody);
  const by = packBy(prepare);
  const people = places.map(({ person }) => person);
  const off = planOf(home, draft, { people, now: desk.now() })?.leftOff ?? [];
  return (
    <>
      <p>
        {words.roundList.title(draft.day)}.{' '}
        {by !== undefined &&
          words.rounds.courier(momentOf(draft.day, draft.courier, home.service.zone), by)}{' '}
        {draft.swabber !== '' &&
          draft.recorder !== '' &&
          say.summary(names.staff(draft.swabber), names.staff(draft.recorder))}
      </p>
      <WishNotice against={againstIn(prepare)} />
      <Part title={say.people}>
        <div class="ready-part">
          <ol class="ready-list">
            {people.map((person) => (
              <ReadyLine key={person} person={person} prepare={prepare} />
            ))}
          </ol>
        </div>
      </Part>
      <KitsPart kitKind={draft.kitKind} day={draft.day} people={people.length} />
      <PpePart day={draft.day} people={people.length} />
      {off.length > 0 && (
        <Part title={say.leftOff}>
          <ul class="prepare-not">
            {off.map(({ person, why }) => (
              <li key={person}>{say.leftOffLine(names.person(person), say.reasons[why])}</li>
            ))}
          </ul>
        </Part>
      )}
    </>
  );
}
