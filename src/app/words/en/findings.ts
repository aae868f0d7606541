import type { LanguageTools } from '../language-tools.ts';

export function findingWords({ dates }: LanguageTools) {
  return {
    states: {
      open: 'open',
      reopened: 'open again',
      'settled-differently': 'settled differently',
      settled: 'settled',
    },
    settledOn: (at: string, who: string) => `Settled ${dates.dayTime(at)} by ${who}.`,
  };
}
