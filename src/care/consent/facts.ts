import * as v from 'valibot';
import { personId } from '../ids.ts';
import { kind, prose, replaces, word } from '../kind.ts';
import { day } from '../time.ts';

/**
 * On whose word a person may be swabbed. `asks-each-time`: decides for themselves and is asked at
 * every try. `refuses`: a standing no. None of them replaces being willing at the bedside.
 */
export const authorities = [
  'asks-each-time',
  'best-interests',
  'attorney',
  'deputy',
  'refuses',
] as const;
export type Authority = (typeof authorities)[number];

export const consentFacts = {
  'consent.decided': kind({
    data: {
      person: personId,
      test: word,
      authority: v.picklist(authorities),
      from: day,
      until: day,
      replaces,
    },
    private: { reason: prose },
    files: (data) => [['person', data.person]],
  }),
};
