import { bedsideWords } from './en/bedside.ts';
import { cameraWords } from './en/camera.ts';
import { careWords } from './en/care.ts';
import { doorWords } from './en/door.ts';
import { formWords } from './en/form.ts';
import { frameWords } from './en/frame.ts';
import { identityWords } from './en/identity.ts';
import { keepingWords } from './en/keeping.ts';
import { listWords } from './en/list.ts';
import { navWords } from './en/nav.ts';
import { nowWords } from './en/now.ts';
import { pageWords } from './en/page.ts';
import { personWords } from './en/person.ts';
import { refusalWords } from './en/refusals.ts';
import { reminderWords } from './en/reminders.ts';
import { roundWords } from './en/rounds.ts';
import { scanWords } from './en/scan.ts';
import { turnWords } from './en/turn.ts';
import { wishWords } from './en/wishes.ts';
import { languageTools } from './language-tools.ts';
import type { WordSettings } from './settings.ts';

/**
 * British English: the first language, whose shape every other language follows. What the door, Now, a
 * round and a turn say; the words of every other page come with those pages (en-all.ts).
 */
export function english(settings: WordSettings) {
  const tools = languageTools('en-GB', settings);
  return {
    language: { code: 'en-GB', direction: 'ltr' as 'ltr' | 'rtl' },
    dates: tools.dates,
    person: personWords(settings.person),
    frame: frameWords(tools),
    bedside: bedsideWords(tools),
    scan: scanWords(),
    camera: cameraWords(),
    identity: identityWords(tools),
    turn: turnWords(tools),
    wishes: wishWords(tools),
    nav: navWords(),
    door: doorWords(tools),
    rounds: roundWords(tools),
    reminders: reminderWords(tools),
    now: nowWords(tools),
    form: formWords(tools),
    list: listWords(),
    page: pageWords(tools),
    refusals: refusalWords(tools),
    keeping: keepingWords(),
    ...careWords(),
  };
}

/** What a language must say at the bedside. A second one is a function `(settings) => Words` in its own file. */
export type Words = ReturnType<typeof english>;
