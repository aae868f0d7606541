import type { JSX } from 'preact';
import type { PersonId } from '../../../care/ids.ts';
import { namesIn } from '../../desk/names.ts';
import { SavePaper } from '../../paper/save-paper.tsx';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { PrintSheet } from '../../pieces/print/print-sheet.tsx';
import { paths, to } from '../paths.ts';
import { PrintRow } from '../print-row.tsx';
import { Drawing } from './drawing.tsx';
import type { EasyData } from './easy-data.ts';
import { useEasy } from './easy-data.ts';
import { LanguageChoice, MissingPhotos } from './strip-screen.tsx';

/** One picture a page, in large print. */
export function BookletScreen({ person }: { readonly person: PersonId }): JSX.Element {
  const data = useEasy(person);
  const { easy, cards, whom, language } = data;
  return (
    <>
      <Above {...data} paper="booklet" />
      <article lang={language}>
        <h1 class="booklet-title">{easy.title(data.person.called)}</h1>
        {cards.map(({ card, picture }) => (
          <section key={card} class="booklet-page">
            <Drawing picture={picture} />
            <p>{easy.cards[card](whom)}</p>
          </section>
        ))}
      </article>
    </>
  );
}

/** The whole story on one sheet of paper. */
export function StoryScreen({ person }: { readonly person: PersonId }): JSX.Element {
  const data = useEasy(person);
  const { desk, words, easy, cards, whom, language } = data;
  const names = namesIn(desk.home, words.refusals.somebody);
  return (
    <>
      <Above {...data} paper="story" />
      <div lang={language}>
        <PrintSheet
          service={desk.service.name}
          title={easy.title(data.person.called)}
          made={words.easyRead.made(desk.now(), names.staff(desk.me))}
          foot={words.easyRead.foot}
        >
          <p>{easy.story(data.person.called)}</p>
          <ol class="story">
            {cards.map(({ card, picture }) => (
              <li key={card}>
                <Drawing picture={picture} />
                {easy.cards[card](whom)}
              </li>
            ))}
          </ol>
        </PrintSheet>
      </div>
    </>
  );
}

function Above(data: EasyData & { readonly paper: 'booklet' | 'story' }): JSX.Element {
  const { desk, easy, whom, person, paper, today } = data;
  const { called } = person;
  const made = new Date(desk.now());
  return (
    <>
      <PrintRow>
        <Button icon="back" href={to(paths.person(data.person.id))}>
          {data.words.easyRead.back}
        </Button>
      </PrintRow>
      <SavePaper of={{ paper, called, whom, words: easy, made }} name={`${paper}-${today}`} />
      {!data.easy.checked && <Notice kind="look" title={data.easy.needsReader} />}
      <MissingPhotos {...data} />
      <LanguageChoice {...data} />
    </>
  );
}
