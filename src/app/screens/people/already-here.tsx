import type { JSX } from 'preact';
import { everybody } from '../../../care/people/person.ts';
import { likelyHere } from '../../../exchange/spreadsheets/likely-here.ts';
import { useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';
import type { PersonFields } from './person-fields.ts';

/** Told while somebody is being added who is most likely on record already. */
export function AlreadyHere({ value }: { readonly value: PersonFields }): JSX.Element | null {
  const desk = useDesk();
  const { people } = useAllWords();
  const say = people.form;
  if (value.name.trim() === '') return null;
  const likely = likelyHere(everybody(desk.home), value);
  if (likely === undefined) return null;
  const { name, born, id } = likely.known;
  return (
    <div role="status">
      <Notice
        kind="look"
        title={born === undefined ? say.alreadyNoBirth(name) : say.already(name, born)}
        action={<Button href={to(paths.person(id))}>{say.see}</Button>}
      />
    </div>
  );
}
