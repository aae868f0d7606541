import type { WishTeller } from '../../../care/people/facts.ts';
import type { WorksAs } from '../../../care/staff/facts.ts';
import type { LanguageTools } from '../language-tools.ts';

/** By whom somebody wants to be helped, and what a colleague says of themselves for that. */
export function helperWords({ list }: LanguageTools) {
  const tellers: Record<WishTeller, string> = {
    person: 'They said it or showed it themselves',
    family: 'Family said it',
    attorney: 'An attorney said it',
    deputy: 'A deputy said it',
    staff: 'Staff saw it',
  };
  const answers: Record<WorksAs, string> = {
    woman: 'A woman',
    man: 'A man',
    unsaid: 'I would rather not say',
  };
  return {
    part: 'Who comes for a swab',
    tellers,
    anybody: 'Anybody may come.',
    wants: (names: readonly string[]) => `Wants ${list(names)}.`,
    unwanted: (names: readonly string[]) => `Does not want ${list(names)}.`,
    swabber: (who: string) => `Asks for ${who} to swab.`,
    told: (how: string) => `${how}.`,
    nobody: 'No wish any more.',
    form: {
      title: 'Who comes for a swab',
      lead: 'Plans keep to this. Only they can give it up, for one day, when they are asked.',
      swabber: 'Do they ask for a woman or a man to swab?',
      anyone: 'No, anybody may',
      aWoman: 'A woman',
      aMan: 'A man',
      wanted: 'Whom do they want?',
      wantedHint: 'One of them comes where that can be.',
      unwanted: 'Whom do they not want?',
      unwantedHint: 'These do not come. A senior can take it back.',
      told: 'How do you know?',
      reason: 'Why, in their words?',
      reasonHint: 'All staff can read this.',
      both: 'Somebody is ticked both ways.',
    },
    worksAs: {
      part: 'Your own answer',
      asked: 'Somebody here asks for a woman or a man to swab.',
      lead: 'You may answer. You need not.',
      title: 'What do you work as?',
      why: 'It is used to plan and prepare a round. No other page shows it.',
      free: 'Without an answer you are not sent to people who ask. You can change it at any time.',
      question: 'I work as',
      answers,
      answered: (answer: string) => `Your answer: ${answer.toLowerCase()}.`,
      none: 'You have not answered.',
      amend: 'Give or change your answer',
      others: 'Only they can answer this, signed in as themselves.',
      entry: 'Answer for planning',
      given: 'Given or changed by themselves.',
    },
    /** For the one day, in the planner. */
    day: {
      title: 'Who asked for somebody, or against somebody?',
      none: 'Nobody on the list.',
      hold: 'These hold today',
      hint: 'Untick one only when they were asked today and said yes.',
      unwanted: (who: string, staff: string) => `${who}: not ${staff}`,
      swabber: (who: string, swabber: string) => `${who}: ${swabber} swabs`,
      units: 'Are units kept apart?',
      unitsOutbreak: 'By the cases here it is an outbreak, so the policy says how.',
      unitsNone: 'By the cases here it is no outbreak.',
      apart: {
        no: 'No',
        'full-change': 'Change all PPE between them',
        'own-pair': 'A pair for each unit',
      },
    },
    policy: {
      cases: 'It is an outbreak from',
      casesIs: (count: number) => `${count} people with a positive result`,
      within: 'Counted over',
      units: 'In an outbreak, between units',
      apart: {
        no: 'nothing more',
        'full-change': 'change all PPE',
        'own-pair': 'a pair for each unit',
      },
    },
  };
}
