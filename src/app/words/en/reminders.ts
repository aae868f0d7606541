import type { DataOf } from '../../../care/catalogue.ts';
import type { LanguageTools } from '../language-tools.ts';

/** What is still to do for somebody, said at the bedside, on their page and while a round is prepared. */
export function reminderWords({ dates }: LanguageTools) {
  const preparations: Record<DataOf<'preparation.agreed'>['what'], string> = {
    medicine: 'Medicine, as the doctor wrote it',
    numbing: 'Something to numb, as the doctor wrote it',
    'visit-first': 'A visit first',
    other: 'Something else',
  };
  return {
    preparations,
    askConsent: 'Ask at the time.',
    noPlan: 'No support plan is written.',
    reviewDue: (since: string) => `The plan was to be read again by ${dates.date(since)}.`,
    photoOld: (since: string) => `The photo is from ${dates.date(since)}. Take a new one.`,
    noseOnly: 'Nose only.',
    planClash: 'Two colleagues wrote the plan in two ways. Read both.',
    decisionReview: (since: string) =>
      `The decision was to be looked at again by ${dates.date(since)}.`,
    documentNotSeen: 'Nobody has seen the paper that gives the right to decide.',
    practice: (reached: number, of: number) => `Practice: ${reached} of ${of} steps done.`,
    preparation: (what: string, minutes: number) =>
      minutes === 0 ? `${what}.` : `${what}, ${minutes} minutes ahead.`,
  };
}
