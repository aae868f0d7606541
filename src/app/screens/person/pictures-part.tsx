import type { JSX } from 'preact';
import { Button } from '../../pieces/form/button.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { paths, to } from '../paths.ts';
import type { PersonData } from './person-data.ts';

/** What is shown, printed and read aloud for the person themselves. */
export function PicturesPart({ words, person }: PersonData): JSX.Element {
  const { easyRead: say, record } = words;
  return (
    <Part
      title={record.parts.strip}
      action={<Button href={to(paths.strip(person.id))}>{say.show}</Button>}
    >
      <p class="soft">{say.lead}</p>
      <div class="button-row">
        <Button icon="print" href={to(paths.booklet(person.id))}>
          {say.booklet}
        </Button>
        <Button icon="print" href={to(paths.story(person.id))}>
          {say.story}
        </Button>
      </div>
    </Part>
  );
}
