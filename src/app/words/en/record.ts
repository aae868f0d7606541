import type { DataOf } from '../../../care/catalogue.ts';
import type { Authority } from '../../../care/consent/facts.ts';
import type { Symptom } from '../../../care/outbreaks/facts.ts';
import type { PlanField } from '../../../care/support/facts.ts';
import type { LanguageTools } from '../language-tools.ts';

type Ways = DataOf<'support.ways'>;

/** One person's record: what each part says. The forms have their own words. */
export function recordWords({ dates, plural, list }: LanguageTools) {
  const plan: Record<PlanField, string> = {
    helps: 'What helps',
    'stop-signs': 'Saying stop',
    'yes-signs': 'Saying yes',
    'no-signs': 'Saying no',
    'unsure-signs': 'Not sure',
    'calm-signs': 'When calm',
    triggers: 'What upsets',
    communication: 'How to talk together',
    place: 'Where',
    reward: 'Reward',
    never: 'Never do',
  };
  const authorities: Record<Authority, string> = {
    'asks-each-time': 'Decides for themselves. Ask each time.',
    'best-interests': 'A best interests decision was made.',
    attorney: 'An attorney decided.',
    deputy: 'A deputy decided.',
    refuses: 'Has said no. Do not ask again.',
  };
  const symptoms: Record<Symptom, string> = {
    cough: 'cough',
    fever: 'fever',
    breathless: 'short of breath',
    'sore-throat': 'sore throat',
    'runny-nose': 'runny nose',
    tired: 'very tired',
    'not-eating': 'not eating',
    confused: 'more confused',
    'loose-stools': 'loose stools',
    'loss-of-taste': 'no taste or smell',
    'not-themselves': 'not themselves',
  };
  const preparations: Record<DataOf<'preparation.agreed'>['what'], string> = {
    medicine: 'Medicine, as the doctor wrote it',
    numbing: 'Something to numb, as the doctor wrote it',
    'visit-first': 'A visit first',
    other: 'Something else',
  };
  const answers: Record<DataOf<'caution.answered'>['answer'], string> = {
    'go-ahead': 'Go ahead',
    'nose-only': 'Nose only',
    'do-not-swab': 'Do not swab',
    'no-longer-applies': 'No longer applies',
  };
  const sites: Record<Ways['sites'], string> = {
    'throat-and-nose': 'Throat and one nostril',
    'nose-only': 'Both nostrils, no throat',
  };
  const identity: Record<Ways['identity'], string> = {
    birthday: 'Says their birthday',
    face: 'By face, named by one who knows them',
  };
  return {
    plan,
    authorities,
    symptoms,
    preparations,
    answers,
    sites,
    identity,
    called: (name: string) => `Likes to be called ${name}.`,
    bornAge: (day: string, age: number) => `${dates.date(day)}, age ${age}`,
    namesake: (names: readonly string[]) => `Much the same here: ${list(names)}.`,
    namesakeWhy: 'Their names or birth dates are the same or alike. Look at the face.',
    hasDied: (name: string) => `${name} has died. No test, no letter.`,
    hasMoved: (name: string) => `${name} has moved away.`,
    parts: {
      due: 'Tests now',
      plan: 'Support plan',
      decision: 'Decision',
      ways: 'How a swab is done',
      cautions: 'Cautions',
      preparations: 'Agreed with the doctor',
      who: 'Who',
      where: 'Where',
      knownBy: 'Who knows them',
      health: 'Symptoms and contact',
      swabs: 'Swabs',
      history: 'How do we know?',
    },
    due: {
      notDue: 'Not due.',
      by: (rule: string, day: string) => `Due by ${dates.dayMonth(day)}: ${rule}.`,
      away: (since: string) => `Not now: away since ${dates.dayMonth(since)}.`,
      recentPositive: (until: string) => `Not before ${dates.dayMonth(until)}: a positive lately.`,
      awaitingResult: (since: string) => `A result is awaited since ${dates.dayMonth(since)}.`,
      ready: 'All is in place.',
      askConsent: 'Ask at the time.',
      noPlan: 'No support plan is written.',
      reviewDue: (since: string) => `The plan was to be read again by ${dates.date(since)}.`,
      photoOld: (since: string) => `The photo is from ${dates.date(since)}. Take a new one.`,
      noseOnly: 'Nose only.',
      preparation: (what: string, minutes: number) =>
        minutes === 0 ? `${what}.` : `${what}, ${minutes} minutes ahead.`,
    },
    noPlan: 'Nothing is written yet. Write what helps and how they say stop.',
    reviewBy: (day: string) => `Read again by ${dates.date(day)}.`,
    reviewLate: (day: string) => `It was to be read again by ${dates.date(day)}.`,
    writePlan: 'Write the plan',
    amendPlan: 'Amend the plan',
    noDecision: 'Nobody has written down who decides.',
    decide: 'Write a decision',
    decisionForLabel: 'For',
    datesLabel: 'Holds',
    writtenBy: 'Written by',
    fromUntil: (from: string, until: string) => `From ${dates.date(from)} to ${dates.date(until)}.`,
    ended: (on: string) => `It ended on ${dates.date(on)}. Ask for a review.`,
    notYet: (on: string) => `It starts on ${dates.date(on)}.`,
    willing: 'It never stands in for being willing at the time.',
    amend: 'Amend',
    amendPart: (part: string) => `Amend: ${part}`,
    selfSwab: 'Does it themselves, with help',
    noSelfSwab: 'Staff do it',
    waysLabels: { sites: 'Sites', identity: 'Identity', self: 'By whom' },
    clinicianNose: 'A clinician said: nose only.',
    noCautions: 'None raised.',
    raise: 'Raise a caution',
    unanswered: 'Nobody has answered yet. No swab until a clinician has.',
    answer: 'Write the answer',
    answerFor: (press: string, caution: string) => `${press}: ${caution}`,
    answerAgain: 'Amend the answer',
    answered: (answer: string, who: string) => `${answer}, said ${who}.`,
    answerUntil: (day: string) => `Until ${dates.date(day)}.`,
    answerOver: (day: string) => `That answer ended on ${dates.date(day)}. Ask again.`,
    noPreparations: 'Nothing agreed.',
    agree: 'Write what was agreed',
    ahead: (minutes: number) =>
      plural(minutes, { one: '1 minute ahead', other: `${minutes} minutes ahead` }),
    saidBy: (who: string) => `Agreed with ${who}.`,
    until: (day: string) => `Until ${dates.date(day)}.`,
    over: (day: string) => `Ended on ${dates.date(day)}.`,
    unit: 'Part of the home',
    sinceHere: (day: string) => `Here since ${dates.date(day)}`,
    hereNow: 'Here',
    wherePress: 'Gone or back',
    symptomsPress: 'Symptoms noticed',
    contactPress: 'Contact with a case',
    noKnownBy: 'No colleague is named yet.',
    knownPress: 'Amend',
    noHealth: 'Nothing noted lately.',
    noticed: (day: string) => dates.dayMonth(day),
    signs: (signs: readonly string[]) => list(signs),
    names: (names: readonly string[]) => `${list(names)}.`,
    contact: 'contact with a case',
    contactWith: (name: string) => `contact with ${name}`,
    noSwabs: 'No swab yet.',
    wireOn: (day: string) => dates.shortDate(day),
    otherKit: (why: string | undefined) =>
      why === undefined ? 'Another kit' : `Another kit: ${why}`,
    wireOf: (name: string, day: string) => `${name}, ${dates.date(day)}`,
    outcome: {
      waiting: 'result awaited',
      held: 'held: does not fit',
      withdrawn: 'taken back',
    },
    historyCount: (count: number) =>
      plural(count, { one: 'The 1 entry of this record', other: `All ${count} entries` }),
  };
}
