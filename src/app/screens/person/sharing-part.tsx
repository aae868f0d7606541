import type { JSX } from 'preact';
import { factsIn, standing } from '../../../care/home.ts';
import { mayAs } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { paths, to } from '../paths.ts';
import type { PersonData } from './person-data.ts';

/** Who is told this person's results, and on whose word that was agreed. */
export function SharingPart({ desk, words, person }: PersonData): JSX.Element {
  const { sharing: say } = words.easyRead;
  const agreed = standing(factsIn(desk.home, 'person', person.id), 'sharing.agreed');
  return (
    <Part
      title={words.record.parts.sharing}
      action={
        mayAs(desk, 'senior') ? (
          <Button href={to(paths.sharing(person.id))}>{say.press}</Button>
        ) : (
          <p class="soft">{words.keeping.seniorOnly}</p>
        )
      }
    >
      {agreed.length === 0 && <p class="soft">{say.none}</p>}
      <DetailList
        details={agreed.map(({ id, data, private: hidden }) => ({
          key: id,
          label: say.readers[data.reader],
          value: [
            hidden?.name ?? words.keeping.erased,
            data.agreed ? say.yes : say.no,
            say.words[data.word],
          ].join('. '),
        }))}
      />
    </Part>
  );
}
