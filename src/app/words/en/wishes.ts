import type { SwabberWish } from '../../../care/people/facts.ts';
import type { LanguageTools } from '../language-tools.ts';

/** What of people's wishes for a swab a pair does not meet: said at the bedside, too. */
export function wishWords({ list }: LanguageTools) {
  const swabbers: Record<SwabberWish, string> = { woman: 'a woman', man: 'a man' };
  return {
    swabbers,
    title: 'This pair is not what they asked for.',
    unwanted: (who: string, staff: string) => `${who} does not want ${staff}.`,
    swabber: (who: string, swabber: string) => `${who} asked for ${swabber} to swab.`,
    ask: (who: string, staff: string) => `Ask ${who} if ${staff} may.`,
    wanted: (who: string, names: readonly string[]) => `${who} would like ${list(names)}.`,
  };
}
