import { bedsideWords } from './en/bedside.ts';
import { formWords } from './en/form.ts';
import { frameWords } from './en/frame.ts';
import { listWords } from './en/list.ts';
import { pageWords } from './en/page.ts';
import { personWords } from './en/person.ts';
import { scanWords } from './en/scan.ts';
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
    form: formWords(tools),
    list: listWords(),
    page: pageWords(tools),
  };
}

/** What a language must say. A second one is a function `(settings) => Words` in its own file. */
export type Words = ReturnType<typeof english>;
