import type { LanguageTools } from '../language-tools.ts';

export function runSheetWords({ dates }: LanguageTools) {
  return {
    title: (day: string) => `Run sheet, ${dates.day(`${day}T12:00:00.000Z`)}`,
    made: (at: string, who: string) => `Printed ${dates.dayTime(at)} by ${who}`,
    foot: 'For the pair only. No birth date stands here: ask for it. Shred it when the round is closed.',
    print: 'Print',
    back: 'Back to the round',
    columns: {
      at: 'No.',
      person: 'Person',
      know: 'What to know',
      kit: 'Label here',
      times: 'Times',
    },
    askBirthday: 'Ask for the birthday. Do not say it.',
    face: 'Known by face. Name them aloud.',
    helps: 'Helps:',
    stops: 'Says stop:',
    never: 'Never:',
    due: (rule: string) => `Due: ${rule}.`,
    out: 'Out',
    sealed: 'Sealed',
    no: 'Said no',
    ended: 'Stopped',
    kits: (lots: readonly string[]) => `Take kits of lot ${lots.join(', then ')}.`,
    lost: 'If the tablet fails, write here. Type it in later with the true times.',
    empty: 'Nobody is on this round.',
  };
}
