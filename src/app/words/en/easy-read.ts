import type { Site } from '../../../care/custody/facts.ts';
import type { Reader } from '../../../care/support/facts.ts';
import type { LanguageTools } from '../language-tools.ts';

/** What staff read around the pictures, the letters, and what is asked afterwards. */
export function easyReadWords({ dates, list }: LanguageTools) {
  const readers: Record<Reader, string> = {
    person: 'For the person',
    family: 'For family',
    doctor: 'For the doctor',
  };
  const sites: Record<Site, string> = {
    throat: 'throat',
    'nostril-1': 'one nostril',
    'nostril-2': 'the other nostril',
  };
  return {
    lead: 'Made from their plan. Show it before and while you go.',
    stripOf: (name: string) => `Pictures for ${name}`,
    show: 'Show the pictures',
    booklet: 'Booklet to print',
    story: 'One-page story',
    back: 'Back',
    language: 'In which language?',
    made: (at: string, who: string) => `Made on ${dates.moment(at)} by ${who}.`,
    foot: 'Pictures and words are ours. Your policy and your doctor come first.',
    photoMissing: (who: readonly string[]) => `No photo yet of ${list(who)}.`,
    noVoice: 'This tablet has no voice for that language.',
    pdf: {
      save: 'Save as PDF',
      making: 'It is being made.',
      saved: 'Saved. The file stays on this tablet until somebody takes it off.',
      failed: 'It could not be made. Try again, or print this page.',
      letters: (missing: readonly string[]) =>
        `A PDF has no sign for ${list(missing)}. Print this page instead.`,
    },
    readers,
    sites,
    letters: 'Letters',
    letterNone: 'No result that stands yet.',
    letter: {
      title: (name: string) => `About a test: ${name}`,
      notDiagnosis: 'This is the result of a swab. It is not a diagnosis.',
      doctorDecides: 'What it means for care is for the doctor to decide.',
      born: 'Born',
      doctorBorn: (day: string) => dates.date(day),
      test: 'Test',
      takenLabel: 'Taken',
      taken: (at: string) => dates.moment(at),
      sitesLabel: 'From',
      sites: (names: readonly string[]) => list(names),
      resultLabel: 'Result',
      codeLabel: 'Code',
      laboratory: 'Laboratory',
      how: 'How it was for them',
      ask: 'Ask us if you want to know more.',
      keep: 'Note that it was made',
      kept: 'It was noted.',
      made: (reader: string, day: string) => `Made for the ${reader} on ${dates.date(day)}.`,
      agreedOn: 'Told because it was agreed:',
      retell: 'The result was put right later. Tell them again.',
    },
    sharing: {
      title: 'Who is told results',
      lead: 'The person decides, if they can. Ask them.',
      reader: 'Who?',
      readers: { family: 'Family or another they trust', doctor: 'The doctor' },
      agreed: 'May they be told?',
      yes: 'Yes',
      no: 'No',
      word: 'On whose word?',
      words: {
        person: 'The person said so',
        'best-interests': 'A best interests decision',
        attorney: 'An attorney',
        deputy: 'A deputy',
      },
      name: 'Their name',
      none: 'Nothing is agreed. So nobody is told but the person.',
      press: 'Write who is told',
    },
    after: {
      title: 'How did it go?',
      lead: 'For the next time. A minute is enough.',
      mood: 'How was it for them?',
      own: 'On their own scale',
      helped: 'What helped?',
      helpedHint: 'Short. It may go into the plan.',
      upset: 'What upset them?',
      press: 'How did it go?',
      proposed: 'For the plan, from how it went',
      proposedLead: 'Nothing is changed until you say so.',
      accept: 'Put this into the plan',
      leave: 'Leave the plan as it is',
    },
    change: (field: string, text: string) => `${field}: ${text}`,
  };
}
