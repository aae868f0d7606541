import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { easyLanguages, easyWords } from '../../../care/easy-read/words.ts';
import type { PersonId } from '../../../care/ids.ts';
import { decideTouch } from '../../../procedures/take-swab/decide.ts';
import { useAct } from '../../desk/use-act.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { PersonBadge } from '../../pieces/list/person-badge.tsx';
import { useAnnounce } from '../../pieces/page/live-region.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { Drawing } from './drawing.tsx';
import type { EasyData } from './easy-data.ts';
import { useEasy } from './easy-data.ts';
import { useVoice } from './use-voice.ts';

/** Their own pictures: what is now, what is next, and a stop that they may press themselves. */
export function StripScreen({ person: id }: { readonly person: PersonId }): JSX.Element {
  const data = useEasy(id);
  const { words, easy, cards, whom, language } = data;
  const [at, setAt] = useState(0);
  const [stopped, setStopped] = useState(false);
  const { act, problem } = useAct();
  const announce = useAnnounce();
  const voice = useVoice(language);
  const now = cards[at];
  const next = cards[at + 1];
  const saidNow = now === undefined ? '' : easy.cards[now.card](whom);
  return (
    <>
      <PageHead title={words.easyRead.stripOf(data.person.called)} />
      {problem !== undefined && <Notice kind="look" title={problem} />}
      {!easy.checked && <Notice kind="look" title={easy.needsReader} />}
      <div lang={language}>
        {stopped ? (
          <section class="strip-now" aria-live="assertive">
            <Drawing picture="stop" />
            <p>{easy.stopped}</p>
          </section>
        ) : (
          <>
            {now !== undefined && (
              <section class="strip-now" aria-live="polite">
                <h2>{easy.now}</h2>
                <Drawing picture={now.picture} />
                {now.card === 'who' && <Faces {...data} />}
                <p>{saidNow}</p>
              </section>
            )}
            <section class="strip-next">
              <h2>{next === undefined ? easy.last : easy.next}</h2>
              {next !== undefined && (
                <>
                  <Drawing picture={next.picture} />
                  <p>{easy.cards[next.card](whom)}</p>
                </>
              )}
            </section>
            <div class="strip-buttons">
              {next !== undefined && (
                <Button kind="main" onPress={() => move(at + 1)}>
                  {easy.onward}
                </Button>
              )}
              <button type="button" class="strip-stop" onClick={() => void stop()}>
                {easy.stop}
              </button>
              {voice.say !== undefined && (
                <Button onPress={() => (voice.speaking ? voice.stop() : voice.say?.(saidNow))}>
                  {voice.speaking ? easy.quiet : easy.readAloud}
                </Button>
              )}
              {at > 0 && <Button onPress={() => move(at - 1)}>{easy.before}</Button>}
            </div>
          </>
        )}
      </div>
      {voice.missing && <p class="soft">{words.easyRead.noVoice}</p>}
      <MissingPhotos {...data} />
      <LanguageChoice {...data} />
      <div class="button-row">
        <Button kind="quiet" href={to(paths.person(id))}>
          {words.easyRead.back}
        </Button>
      </div>
    </>
  );

  function move(to_: number): void {
    voice.stop();
    setAt(to_);
  }

  /** What they see comes first; if their turn is open, it is stopped in the record too. */
  async function stop(): Promise<void> {
    setStopped(true);
    voice.stop();
    announce(easy.stopped);
    const { turn } = data;
    if (turn === undefined) return;
    await act((home, doing) => decideTouch(home, { do: 'stop', turn: turn.id }, doing));
  }
}

function Faces({ staff }: EasyData): JSX.Element {
  return (
    <div class="strip-faces">
      {staff.map(({ id, called, photo }) => (
        <PersonBadge key={id} name={called} photo={photo} size="large" />
      ))}
    </div>
  );
}

/** Told to staff: a picture of who comes is worth more than a name. */
export function MissingPhotos({ staff, words }: EasyData): JSX.Element | null {
  const missing = staff.filter(({ photo }) => photo === undefined).map(({ called }) => called);
  return missing.length === 0 ? null : (
    <p class="soft no-print">{words.easyRead.photoMissing(missing)}</p>
  );
}

export function LanguageChoice({ words, language, setLanguage }: EasyData): JSX.Element {
  return (
    <div class="no-print">
      <Choice
        id="language"
        label={words.easyRead.language}
        value={language}
        onValue={setLanguage}
        problem={undefined}
        inline
        options={easyLanguages.map((each) => {
          const { name, needsReader } = easyWords(each);
          return { value: each, label: name, ...(needsReader !== '' && { hint: needsReader }) };
        })}
      />
    </div>
  );
}
