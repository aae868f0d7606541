import { type DateWords, dateWords } from './date-words.ts';
import { type Plural, pluralOf } from './plural.ts';
import type { WordSettings } from './settings.ts';

/** What each area of a language's catalogue is made with. */
export interface LanguageTools {
  readonly dates: DateWords;
  readonly plural: Plural;
  /** "Oriel, Tamsin and Bram", by the language's own rule. */
  readonly list: (items: readonly string[]) => string;
  readonly number: (value: number) => string;
}

export function languageTools(locale: string, settings: WordSettings): LanguageTools {
  const list = new Intl.ListFormat(locale, { style: 'long', type: 'conjunction' });
  const number = new Intl.NumberFormat(locale);
  return {
    dates: dateWords(locale, settings.timeZone),
    plural: pluralOf(locale),
    list: (items) => list.format(items),
    number: (value) => number.format(value),
  };
}
