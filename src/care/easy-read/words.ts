import { english } from './words/english.ts';
import { welsh } from './words/welsh.ts';

/** What a language says to the person. A second one is a file of its own with the same shape. */
export type EasyWords = ReturnType<typeof english>;
export const easyLanguages = ['en-GB', 'cy'] as const;
export type EasyLanguage = (typeof easyLanguages)[number];

const catalogues: Record<EasyLanguage, () => EasyWords> = { 'en-GB': english, cy: welsh };
export const easyWords = (language: EasyLanguage): EasyWords => catalogues[language]();
