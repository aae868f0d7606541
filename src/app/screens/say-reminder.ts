import type { Reminder } from '../../care/rounds/readiness.ts';
import type { Words } from '../words/en.ts';

/** What is still to do for somebody, and holds nothing by itself. */
export function sayReminder(reminder: Reminder, words: Words): string {
  const say = words.reminders;
  switch (reminder.remind) {
    case 'ask-consent':
      return say.askConsent;
    case 'no-plan':
      return say.noPlan;
    case 'plan-review-due':
      return say.reviewDue(reminder.on);
    case 'preparation':
      return say.preparation(say.preparations[reminder.what], reminder.leadMinutes);
    case 'photo-old':
      return say.photoOld(reminder.since);
    case 'nose-only':
      return say.noseOnly;
    case 'plan-clash':
      return say.planClash;
    case 'decision-review-due':
      return say.decisionReview(reminder.on);
    case 'document-not-seen':
      return say.documentNotSeen;
    case 'practice':
      return say.practice(reminder.reached, reminder.of);
  }
}
