import { bedsideWords } from './en/bedside.ts';
import { cameraWords } from './en/camera.ts';
import { careWords } from './en/care.ts';
import { doorWords } from './en/door.ts';
import { findingWords } from './en/findings.ts';
import { fitWords } from './en/fit.ts';
import { formWords } from './en/form.ts';
import { frameWords } from './en/frame.ts';
import { identityWords } from './en/identity.ts';
import { labelWords } from './en/labels.ts';
import { listWords } from './en/list.ts';
import { navWords } from './en/nav.ts';
import { nowWords } from './en/now.ts';
import { pageWords } from './en/page.ts';
import { personWords } from './en/person.ts';
import { refusalWords } from './en/refusals.ts';
import { roundWords } from './en/rounds.ts';
import { scanWords } from './en/scan.ts';
import { turnWords } from './en/turn.ts';
import { languageTools } from './language-tools.ts';
import type { WordSettings } from './settings.ts';

/** British English: the first language, whose shape every other language follows. */
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
    labels: labelWords(),
    fit: fitWords(tools),
    turn: turnWords(tools),
    nav: navWords(),
    door: doorWords(tools),
    findings: findingWords(tools),
    rounds: roundWords(tools),
    now: nowWords(tools),
    form: formWords(tools),
    list: listWords(),
    page: pageWords(tools),
    refusals: refusalWords(tools),
    ...careWords(),
  };
}

/** What a language must say. A second one is a function `(settings) => Words` in its own file. */
export type Words = ReturnType<typeof english>;
