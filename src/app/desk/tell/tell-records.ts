import type { Kind } from '../../../care/catalogue.ts';
import { sayHelpers } from '../say-helpers.ts';
import { sayHours, sayTimes } from '../say-usual-times.ts';
import type { Tells } from './telling.ts';

type Records = Extract<
  Kind,
  | `policy.${string}`
  | `staff.${string}`
  | `person.${string}`
  | `unit.${string}`
  | `consent.${string}`
  | `support.${string}`
  | `caution.${string}`
  | `preparation.${string}`
  | `symptoms.${string}`
  | `contact.${string}`
  | `home.${string}`
  | `entry.${string}`
  | `decision.${string}`
  | `practice.${string}`
  | `after.${string}`
  | `sharing.${string}`
  | `letter.${string}`
>;

/** Who people and colleagues are, what was decided and agreed, what was noticed. */
export const tellRecords: Tells<Records> = {
  'policy.written': ({ data }, { words }) => words.facts.policyWritten(data.policy, data.version),
  'policy.confirmed': ({ data }, { words }) =>
    words.facts.policyConfirmed(data.policy, data.version, data.from),
  'staff.described': ({ data, private: hidden }, { words }) =>
    words.facts.field(
      words.facts.staffFields[data.about],
      data.about === 'photo' ? words.facts.new : (hidden?.value ?? words.facts.erased),
    ),
  'staff.role': ({ data }, { words, names }) =>
    words.facts.roleGiven(names.staff(data.staff), words.roles[data.role]),
  'staff.competence': ({ data }, { words, names }) =>
    words.facts.trained(names.staff(data.staff), words.facts.skills[data.skill], data.until),
  'staff.knows': ({ data }, { words, names }) =>
    words.facts.knows(names.staff(data.staff), names.person(data.person), data.knows),
  'staff.hours': ({ data }, { words }) => sayHours(data, words),
  'staff.apart': ({ data }, { words, names }) =>
    (data.apart ? words.usual.apartNow : words.usual.apartNoMore)(
      names.staff(data.staff),
      names.staff(data.other),
    ),
  'person.times': ({ data }, { words }) => sayTimes(data, words),
  // Not the answer: what a colleague works as is shown nowhere but in planning and preparing.
  'staff.works-as': (_fact, { words }) => words.helpers.worksAs.given,
  'person.helpers': ({ data }, { words, names }) => sayHelpers(data, words, names),
  'staff.returned': ({ data }, { words, names }) =>
    words.facts.staffReturned(names.staff(data.staff), data.on),
  'entry.struck-out': ({ private: hidden }, { words }) =>
    words.facts.struckOut(hidden?.reason ?? words.facts.erased),
  'staff.left': ({ data }, { words, names }) =>
    words.facts.staffLeft(names.staff(data.staff), data.on),
  'person.described': ({ data, private: hidden }, { words }) =>
    words.facts.field(
      words.facts.personFields[data.about],
      data.about === 'photo' ? words.facts.new : (hidden?.value ?? words.facts.erased),
    ),
  'person.placed': ({ data }, { words, names }) =>
    words.facts.placed(names.person(data.person), names.unit(data.unit)),
  'unit.described': ({ private: hidden }, { words }) =>
    words.facts.unit(hidden?.value ?? words.facts.erased),
  'person.came': ({ data }, { words, names }) =>
    words.facts.came(names.person(data.person), data.on, data.from),
  'person.went': ({ data }, { words, names }) =>
    words.facts.went(names.person(data.person), data.on, data.to),
  'consent.decided': ({ data }, { words, names }) =>
    words.facts.consent(
      names.person(data.person),
      words.facts.authority[data.authority],
      data.from,
      data.until,
    ),
  'decision.looked-at': (_fact, { words }) => words.facts.decisionLooked,
  'practice.asked': ({ data }, { words }) => words.facts.practiceAsked(data.wanted),
  'practice.session': ({ data }, { words }) =>
    words.facts.practiceSession(data.step, words.facts.practiceEnds[data.end]),
  'after.noted': ({ data }, { words }) => words.facts.after(words.turn.settled.moods[data.mood]),
  'after.answered': ({ data }, { words }) => words.facts.afterAnswered(data.accepted.length),
  'sharing.agreed': ({ data }, { words }) =>
    words.facts.sharing(words.facts.readers[data.reader], data.agreed),
  'letter.made': ({ data }, { words }) => words.facts.letter(words.facts.readers[data.reader]),
  'support.described': ({ data, private: hidden }, { words }) =>
    words.facts.field(words.facts.planFields[data.about], hidden?.value ?? words.facts.erased),
  'support.reviewed': ({ data }, { words }) => words.facts.planReviewed(data.next),
  'support.ways': ({ data }, { words }) =>
    words.facts.ways(data.identity === 'face', data.sites === 'nose-only', data.selfSwab),
  'caution.raised': ({ data }, { words }) =>
    words.facts.cautionRaised(words.cautions[data.caution]),
  'caution.answered': ({ data }, { words }) => words.facts.cautionAnswers[data.answer],
  'preparation.agreed': ({ data }, { words }) =>
    words.facts.preparationAgreed(words.facts.preparations[data.what], data.leadMinutes),
  'preparation.done': (_fact, { words }) => words.facts.preparationDone,
  'symptoms.noticed': ({ data }, { words }) => words.facts.symptoms(data.on),
  'contact.noted': ({ data }, { words, names }) =>
    words.facts.contact(data.on, data.source === undefined ? undefined : names.person(data.source)),
  'home.tested-on': ({ data }, { words }) => words.facts.homeTested(data.on),
  'home.called-off': ({ private: hidden }, { words }) =>
    words.facts.homeCalledOff(hidden?.reason ?? words.facts.erased),
};
