import type { DataOf } from '../../../care/catalogue.ts';
import type { Authority } from '../../../care/consent/facts.ts';
import type { PlanField } from '../../../care/support/facts.ts';

/** The forms of one person's record: what each asks, and what to know while answering. */
export function supportWords() {
  const planHints: Partial<Record<PlanField, string>> = {
    helps: 'Always in view during their turn. Two short lines at most.',
    'stop-signs': 'Always in view. Go on from: "is saying stop when …"',
    'yes-signs': 'What yes looks or sounds like.',
    'no-signs': 'What no looks or sounds like.',
    'unsure-signs': 'Not sure means not now.',
    never: 'What must not be done, whatever happens.',
    'calm-signs': 'What you see when all is well.',
    'distress-signs': 'What you see when it is too much.',
    triggers: 'What sets it off: words, noises, faces.',
    staff: 'Who they like to have there.',
    time: 'The time of day that suits them.',
    position: 'Sitting, lying, in whose chair.',
    sensory: 'Light, noise, touch and smell: more or less of what.',
    'sites-tolerated': 'Throat, nose, which side, how long.',
    'own-scale': 'Their own words, calm first, with commas between.',
  };
  const authorityHints: Record<Authority, string> = {
    'asks-each-time': 'They understand this test, and are asked at each try.',
    'best-interests': 'They cannot decide this now. A meeting decided for this one person.',
    attorney: 'Somebody has the right to decide on health. You saw the paper.',
    deputy: 'A court named somebody to decide. You saw the order.',
    refuses: 'A standing no. It is not asked about again.',
    supported: 'They decide, with people they trust beside them.',
    interpretation: 'Others read what they want, as well as they can.',
    nobody: 'Nobody has shown the right to decide. No swab is taken.',
  };
  const authorities: Record<Authority, string> = {
    'asks-each-time': 'They decide each time',
    'best-interests': 'Best interests decision',
    attorney: 'An attorney',
    deputy: 'A deputy',
    refuses: 'They have said no',
    supported: 'They decide, with help',
    interpretation: 'What they would want, read by others',
    nobody: 'Nobody, so far',
  };
  const answerHints: Record<DataOf<'caution.answered'>['answer'], string> = {
    'go-ahead': 'A swab is fine, as planned.',
    'nose-only': 'Both nostrils, never the throat.',
    'do-not-swab': 'No swab for as long as this holds.',
    'no-longer-applies': 'The caution is over.',
  };
  return {
    authorities,
    authorityHints,
    about: (name: string) => `For ${name}.`,
    plan: {
      title: 'Support plan',
      hints: planHints,
      more: 'The other fields',
      next: 'Read it again by',
      nextHint: 'Six months is usual. Sooner if much changes.',
    },
    ways: {
      title: 'How a swab is done',
      sites: 'Which sites?',
      identity: 'How is it made sure who this is?',
      identityHints: {
        birthday: 'They are asked, and the answer is picked from four.',
        face: 'One who knows them names them. The face is picked from four.',
      },
      self: 'Who holds the swab?',
      needsPhoto: 'There is no photo yet. Without one no swab can start.',
      needsBirth: 'There is no birth date yet. Without one no swab can start.',
    },
    caution: {
      title: 'Raise a caution',
      lead: 'From now on no swab is taken until a clinician has answered.',
      which: 'What is it?',
      note: 'What did you see or hear?',
    },
    answer: {
      title: 'What the clinician said',
      lead: (caution: string) => `The caution: ${caution}.`,
      asks: 'Write what they said, not what you think.',
      which: 'What may be done?',
      hints: answerHints,
      clinician: 'Who said it?',
      clinicianHint: 'Name and post, such as the duty doctor at the surgery.',
      words: 'In their words',
      until: 'Holds until',
      untilHint: 'Leave it empty if they named no end.',
      gone: 'This caution has been answered or taken out. Go back.',
    },
    preparation: {
      title: 'Agreed with the doctor',
      lead: 'Something done before the swab, so that it is easier to bear.',
      caution: 'Never write a dose here. The chart and the doctor decide that.',
      which: 'What is it?',
      leadMinutes: 'How many minutes ahead?',
      until: 'Agreed until',
      clinician: 'Who agreed to it?',
      words: 'In their words',
    },
    whereabouts: {
      title: 'Gone or back',
      what: 'What happened?',
      went: {
        hospital: 'Went to hospital',
        leave: 'Went away for a while',
        moved: 'Moved away for good',
        died: 'Died',
      },
      came: {
        hospital: 'Came back from hospital',
        leave: 'Came back from being away',
        admission: 'Moved in',
      },
      on: 'On which day?',
      diedNote: 'Letters and tests stop. Results that still come are told to the manager.',
      backNote: 'Somebody who comes back may need a test. The policy says when.',
    },
    symptoms: {
      title: 'Symptoms noticed',
      lead: 'If you are worried now, ring for help first.',
      signs: 'What do you see?',
      note: 'In your words',
      noteHint: 'Since when, how bad, what is different from usual.',
      on: 'Since which day?',
    },
    contact: {
      title: 'Contact with a case',
      lead: 'Somebody was near a person who has the illness.',
      source: 'Near whom?',
      sourceHint: 'Leave it open if it was a visitor, or somebody not on this list.',
      on: 'On which day?',
      onHint: 'The last day they were near each other.',
      note: 'Where and how long',
    },
    knownBy: {
      title: (name: string) => `Who knows ${name} by sight?`,
      lead: 'Only those who could pick the face among others.',
      staff: 'Colleagues',
    },
  };
}
