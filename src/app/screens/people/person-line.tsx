import type { JSX } from 'preact';
import type { Person } from '../../../care/people/person.ts';
import { unitOf } from '../../../care/people/unit.ts';
import { flagsOf } from '../../../care/record/flags.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { Chips } from '../../pieces/list/chips.tsx';
import { PersonBadge } from '../../pieces/list/person-badge.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';
import { flagChip } from './flag-words.ts';
import { sayWhere } from './where-words.ts';

/** One person in the list: face, name, where they live and are, and what to look at. */
export function PersonLine({ person }: { readonly person: Person }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { people, keeping } = words;
  const flags = flagsOf(desk.home, person.id, todayOf(desk));
  const place = [
    person.room && people.room(person.room),
    person.unit && unitOf(desk.home, person.unit).name,
  ].filter(Boolean);
  const { where } = person.whereabouts;
  return (
    <li class="person-line">
      <PersonBadge name={person.name} photo={person.photo} />
      <div class="person-line-who">
        <a href={to(paths.person(person.id))}>
          {person.name || (person.erased ? keeping.erased : keeping.nothing)}
        </a>
        <span class="person-line-place">
          {place.join(', ')}
          {where !== 'here' && (
            <span data-where={where}>
              {place.length > 0 && ' · '}
              {sayWhere(person.whereabouts, words)}
            </span>
          )}
        </span>
      </div>
      <Chips chips={flags.map((flag) => flagChip(flag, desk, words))} />
    </li>
  );
}
