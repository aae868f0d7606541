import type { JSX } from 'preact';
import type { PersonId, TestId } from '../../../care/ids.ts';
import { letterFor } from '../../../care/results/letter.ts';
import type { Reader } from '../../../care/support/facts.ts';
import { readers } from '../../../care/support/facts.ts';
import { makeLetter } from '../../../procedures/note-after.ts';
import { sayRefusal } from '../../desk/say-refusal.ts';
import { useAct } from '../../desk/use-act.ts';
import { SavePaper } from '../../paper/save-paper.tsx';
import { Button } from '../../pieces/form/button.tsx';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAnnounce } from '../../pieces/page/live-region.tsx';
import { PrintSheet } from '../../pieces/print/print-sheet.tsx';
import { Drawing } from '../easy-read/drawing.tsx';
import { useEasy } from '../easy-read/easy-data.ts';
import { LanguageChoice } from '../easy-read/strip-screen.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { PrintRow } from '../print-row.tsx';
import type { LetterText } from './letter-text.ts';
import { letterText } from './letter-text.ts';

interface LetterProps {
  readonly person: PersonId;
  readonly test: TestId;
  readonly reader: string;
}

const readerOf = (text: string): Reader => readers.find((each) => each === text) ?? 'person';

/** A result told on paper: to the person in pictures, to family as agreed, to the doctor in the record's terms. */
export function LetterScreen({ person: id, test, reader: text }: LetterProps): JSX.Element {
  const data = useEasy(id);
  const { desk, words, person, today } = data;
  const { act, problem } = useAct();
  const announce = useAnnounce();
  const reader = readerOf(text);
  const say = words.easyRead.letter;
  const letter = letterFor(desk.home, { person: id, test, reader });
  const back = (
    <Button icon="back" href={to(paths.person(id))}>
      {words.easyRead.back}
    </Button>
  );
  if (!letter.ok) {
    return (
      <>
        <PageHead title={say.title(person.called)} />
        <Notice kind="look" title={sayRefusal(letter, { words, home: desk.home })} action={back} />
      </>
    );
  }
  const said = letterText(data, letter.value);
  return (
    <>
      <PrintRow>
        <Button onPress={() => void note()}>{say.keep}</Button>
        {back}
      </PrintRow>
      <SavePaper
        of={{ paper: 'letter', ...said, made: new Date(desk.now()) }}
        name={`letter-${today}`}
        first={note}
      />
      {problem !== undefined && <Notice kind="look" title={problem} />}
      {letter.value.retell && <Notice kind="look" title={say.retell} />}
      {reader === 'person' && <LanguageChoice {...data} />}
      {reader === 'person' && !data.easy.checked && (
        <Notice kind="look" title={data.easy.needsReader} />
      )}
      <div lang={said.language}>
        <PrintSheet service={said.service} title={said.title} made={said.madeLine} foot={said.foot}>
          <Body said={said} />
        </PrintSheet>
      </div>
    </>
  );

  /** That a letter was made is kept before the letter leaves the screen. */
  async function note(): Promise<boolean> {
    const kept = await act((home) => makeLetter(home, { person: id, test, reader }));
    if (kept !== undefined) announce(say.kept);
    return kept !== undefined;
  }
}

/** The result in one picture and a few short sentences; or line by line, for whoever wants the record. */
function Body({ said }: { readonly said: LetterText }): JSX.Element {
  const { picture, sentences, lines } = said;
  return (
    <div class={picture === undefined ? undefined : 'booklet-page'}>
      {picture !== undefined && <Drawing picture={picture} />}
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {lines.length > 0 && (
        <DetailList
          details={lines.map(({ label, value }) => ({ ...{ key: label, label, value } }))}
        />
      )}
    </div>
  );
}
