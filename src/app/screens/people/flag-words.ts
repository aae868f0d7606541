import type { Flag } from '../../../care/record/flags.ts';
import type { Refusal } from '../../../care/refusal.ts';
import type { Desk } from '../../desk/desk.ts';
import { sayRefusal } from '../../desk/say-refusal.ts';
import type { Chip } from '../../pieces/list/chips.tsx';
import type { AllWords } from '../../words/en-all.ts';

/** A flag beside a name, in two or three words. What holds a swab carries the diamond. */
export function flagChip(flag: Flag, desk: Desk, words: AllWords): Chip {
  const { flags } = words.people;
  switch (flag.flag) {
    case 'holds':
      return { key: JSON.stringify(flag.hold), text: sayHold(flag.hold, desk, words), look: true };
    case 'no-plan':
      return { key: flag.flag, text: flags.noPlan };
    case 'review-due':
      return { key: flag.flag, text: flags.reviewDue };
    case 'namesake':
      return { key: flag.flag, text: flags.namesake };
  }
}

function sayHold(hold: Refusal, desk: Desk, words: AllWords): string {
  const { flags } = words.people;
  switch (hold.reason) {
    case 'consent-ended':
      return flags.decisionEnded(hold.on);
    case 'consent-not-yet':
      return flags.decisionStarts(hold.on);
    case 'consent-missing':
      return flags.noDecision;
    case 'consent-other-test':
      return flags.otherDecision;
    case 'consent-refused':
      return flags.refuses;
    case 'caution-unanswered':
      return flags.caution(words.cautions[hold.caution]);
    case 'caution-says-no':
      return flags.cautionNo;
    case 'photo-missing':
      return flags.noPhoto;
    case 'birthday-missing':
      return flags.noBirthDate;
    default:
      return sayRefusal(hold, { words, home: desk.home });
  }
}
