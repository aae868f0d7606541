import type { DataOf, Fact, FactOf } from '../../../care/catalogue.ts';
import { unitOf } from '../../../care/people/unit.ts';
import { isErased } from '../../../care/record/erased.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import type { Desk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { sayHelpers } from '../../desk/say-helpers.ts';
import { sayHours, sayTimes } from '../../desk/say-usual-times.ts';
import type { AllWords } from '../../words/en-all.ts';

/** One entry of a record in words: what it is about, and what it says. */
export interface SaidEntry {
  readonly what: string;
  readonly value: string;
}

export interface Telling {
  readonly desk: Desk;
  readonly words: AllWords;
  /** Whose record it stands in: what is filed with both is told from the other side. */
  readonly of: 'person' | 'staff' | 'lot';
}

/** Says an entry. What was erased is said to be erased. */
export function sayEntry(fact: Fact, telling: Telling): SaidEntry {
  return (
    sayAboutPerson(fact, telling) ??
    saySupport(fact, telling) ??
    sayAboutStaff(fact, telling) ??
    sayTaken(fact, telling) ??
    sayKits(fact, telling) ?? { what: telling.words.history.what.other, value: '' }
  );
}

const hidden = (fact: Fact, text: string, { words }: Telling): string =>
  isErased(fact) ? words.keeping.erased : text;

function sayAboutPerson(fact: Fact, telling: Telling): SaidEntry | undefined {
  const { words, desk } = telling;
  const { history } = words;
  const { what } = history;
  switch (fact.kind) {
    case 'person.described':
      return {
        what: words.people.fields[fact.data.about],
        value: hidden(fact, sayField(fact, words), telling),
      };
    case 'person.placed':
      return { what: what.unit, value: unitOf(desk.home, fact.data.unit).name };
    case 'person.came':
      return { what: what.came, value: history.came[fact.data.from](fact.data.on) };
    case 'person.went':
      return { what: what.went, value: history.went[fact.data.to](fact.data.on) };
    case 'entry.struck-out':
      return { what: what.struckOut, value: hidden(fact, fact.private?.reason ?? '', telling) };
    case 'symptoms.noticed':
    case 'contact.noted':
      return sayHealth(fact, telling);
    default:
      return undefined;
  }
}

function sayField(
  { data, private: kept }: FactOf<'person.described'> | FactOf<'staff.described'>,
  { history, dates }: AllWords,
): string {
  const value = kept?.value ?? '';
  if (data.about === 'photo') return value === '' ? history.noPhoto : history.photo;
  if (value === '') return history.empty;
  return data.about === 'born' ? dates.date(value) : value;
}

function sayHealth(
  fact: FactOf<'symptoms.noticed'> | FactOf<'contact.noted'>,
  telling: Telling,
): SaidEntry {
  const { words, desk } = telling;
  const { history, record } = words;
  const note = hidden(fact, fact.private?.note ?? '', telling);
  if (fact.kind === 'symptoms.noticed') {
    const signs = fact.data.signs.map((sign) => record.symptoms[sign]);
    return {
      what: history.what.symptoms,
      value: history.noted(fact.data.on, [...signs, note].filter(Boolean)),
    };
  }
  const { source, on } = fact.data;
  const names = namesIn(desk.home, words.refusals.somebody);
  return {
    what: history.what.contact,
    value: history.noted(on, [source && names.person(source), note].filter(isText)),
  };
}

const isText = (text: string | undefined): text is string => text !== undefined && text !== '';

function saySupport(fact: Fact, telling: Telling): SaidEntry | undefined {
  const { words } = telling;
  const { history, record, reminders } = words;
  const { what } = history;
  switch (fact.kind) {
    case 'consent.decided':
      return { what: what.decision, value: sayDecision(fact, telling) };
    case 'support.described':
      return {
        what: record.plan[fact.data.about],
        value: hidden(fact, fact.private?.value || history.empty, telling),
      };
    case 'support.reviewed':
      return { what: what.review, value: words.dates.date(fact.data.next) };
    case 'support.ways':
      return { what: what.ways, value: sayWays(fact.data, words) };
    case 'person.times':
      return { what: words.usual.parts.times, value: sayTimes(fact.data, words) };
    case 'person.helpers':
      return { what: words.helpers.part, value: sayWishes(fact, telling) };
    case 'caution.raised':
      return {
        what: what.caution,
        value: `${words.cautions[fact.data.caution]}. ${hidden(fact, fact.private?.note ?? '', telling)}`,
      };
    case 'caution.answered':
      return {
        what: what.answer,
        value: `${record.answers[fact.data.answer]}. ${sayClinician(fact, telling)}`,
      };
    case 'preparation.agreed':
      return {
        what: what.preparation,
        value: `${reminders.preparations[fact.data.what]}. ${sayClinician(fact, telling)}`,
      };
    case 'decision.looked-at':
      return { what: what.looked, value: '' };
    case 'practice.asked':
      return { what: what.practice, value: words.facts.practiceAsked(fact.data.wanted) };
    case 'practice.session':
      return {
        what: what.practice,
        value: words.facts.practiceSession(fact.data.step, words.facts.practiceEnds[fact.data.end]),
      };
    case 'after.noted':
      return {
        what: what.after,
        value: [words.turn.settled.moods[fact.data.mood], sayAfter(fact, telling)].join('. '),
      };
    case 'after.answered':
      return { what: what.after, value: words.facts.afterAnswered(fact.data.accepted.length) };
    case 'sharing.agreed':
      return {
        what: what.sharing,
        value: words.facts.sharing(words.facts.readers[fact.data.reader], fact.data.agreed),
      };
    case 'letter.made':
      return {
        what: what.letter,
        value: words.facts.letter(words.facts.readers[fact.data.reader]),
      };
    case 'preparation.done':
      return { what: what.prepared, value: sayRound(fact.data.round, telling) };
    default:
      return undefined;
  }
}

const sayWishes = (fact: FactOf<'person.helpers'>, telling: Telling): string => {
  const { words, desk } = telling;
  const names = namesIn(desk.home, words.refusals.somebody);
  const said = [
    sayHelpers(fact.data, words, names),
    words.helpers.told(words.helpers.tellers[fact.data.told]),
    hidden(fact, fact.private?.reason ?? '', telling),
  ];
  return said.filter(isText).join(' ');
};

const sayAfter = (fact: FactOf<'after.noted'>, telling: Telling): string =>
  hidden(
    fact,
    [fact.private?.helped, fact.private?.upset].filter((text) => isText(text)).join(' '),
    telling,
  );

function sayDecision(fact: FactOf<'consent.decided'>, telling: Telling): string {
  const { record } = telling.words;
  const { authority, from, until } = fact.data;
  return [
    record.authorities[authority],
    record.fromUntil(from, until),
    hidden(fact, fact.private?.reason ?? '', telling),
  ].join(' ');
}

const sayWays = (ways: DataOf<'support.ways'>, { record }: AllWords): string =>
  [
    record.sites[ways.sites],
    record.identity[ways.identity],
    ways.selfSwab ? record.selfSwab : record.noSelfSwab,
  ].join('. ');

const sayClinician = (
  fact: FactOf<'caution.answered'> | FactOf<'preparation.agreed'>,
  telling: Telling,
): string =>
  hidden(fact, `${fact.private?.clinician ?? ''}: ${fact.private?.words ?? ''}`, telling);

function sayAboutStaff(fact: Fact, telling: Telling): SaidEntry | undefined {
  const { words, desk, of } = telling;
  const { history } = words;
  const { what } = history;
  const names = namesIn(desk.home, words.refusals.somebody);
  switch (fact.kind) {
    case 'staff.described':
      return {
        what: history.staffFields[fact.data.about],
        value: hidden(fact, sayField(fact, words), telling),
      };
    case 'staff.role':
      return { what: what.role, value: words.roles[fact.data.role] };
    case 'staff.competence':
      return {
        what: what.training,
        value: history.training(history.skills[fact.data.skill], fact.data.until),
      };
    case 'staff.knows': {
      const { knows, person, staff } = fact.data;
      const value =
        of === 'person'
          ? (knows ? history.knows : history.knowsNot)(names.staff(staff))
          : (knows ? history.knowsPerson : history.knowsPersonNot)(names.person(person));
      return { what: what.knows, value };
    }
    case 'staff.hours':
      return { what: words.usual.parts.hours, value: sayHours(fact.data, words) };
    case 'staff.works-as':
      // Not the answer: that is for planning and preparing alone.
      return { what: words.helpers.worksAs.entry, value: words.helpers.worksAs.given };
    case 'staff.apart': {
      const { apart, staff, other } = fact.data;
      const say = apart ? words.usual.apartNow : words.usual.apartNoMore;
      return { what: words.usual.parts.hours, value: say(names.staff(staff), names.staff(other)) };
    }
    case 'staff.left':
      return { what: what.left, value: words.dates.date(fact.data.on) };
    case 'staff.returned':
      return { what: what.returned, value: words.dates.date(fact.data.on) };
    default:
      return undefined;
  }
}

function sayTaken(fact: Fact, telling: Telling): SaidEntry | undefined {
  const { words, desk } = telling;
  const { history } = words;
  const names = namesIn(desk.home, words.refusals.somebody);
  switch (fact.kind) {
    case 'turn.opened':
      return {
        what: history.what.turn,
        value: history.pair(names.staff(fact.data.swabber), names.staff(fact.data.recorder)),
      };
    case 'round.listed':
      return { what: history.what.listed, value: sayRound(fact.data.round, telling) };
    default:
      return undefined;
  }
}

function sayRound(round: DataOf<'round.listed'>['round'], { desk, words }: Telling): string {
  const day = roundOf(desk.home, round)?.planned.data.day;
  return day === undefined ? words.history.aRound : words.history.roundOf(day);
}

function sayKits(fact: Fact, telling: Telling): SaidEntry | undefined {
  const { supplies } = telling.words;
  const { history: say } = supplies;
  switch (fact.kind) {
    case 'kits.delivered':
      return { what: say.delivered, value: say.box(fact.data.count, fact.data.expires) };
    case 'kits.unpacked':
      return { what: say.unpacked, value: fact.data.codes.join(', ') };
    case 'kits.counted':
      return { what: say.counted, value: supplies.kits(fact.data.count) };
    case 'lot.recalled':
      return { what: say.recalled, value: hidden(fact, fact.private?.reason ?? '', telling) };
    case 'kit.put-aside':
      return {
        what: say.aside,
        value: [supplies.reasons[fact.data.why], fact.data.code].filter(Boolean).join(', '),
      };
    case 'kit.opened':
      return { what: say.opened, value: fact.data.code };
    default:
      return undefined;
  }
}
