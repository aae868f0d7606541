import type { PersonField } from '../../../care/people/facts.ts';
import type { LanguageTools } from '../language-tools.ts';
import type { WordSettings } from '../settings.ts';
import { personWords } from './person.ts';

/** The list of people, and who somebody is. */
export function peopleWords({ dates, plural }: LanguageTools, settings: WordSettings) {
  const who = personWords(settings.person);
  const fields: Record<PersonField | 'unit', string> = {
    name: 'Full name',
    called: 'Likes to be called',
    born: 'Birth date',
    room: 'Room',
    unit: 'Part of the home',
    identifier: 'Health service number',
    photo: 'Photo',
    note: 'Note',
  };
  return {
    title: 'People',
    fields,
    add: `Add a ${who.one}`,
    bringIn: 'Bring in a list',
    search: 'Find by name or room',
    found: (count: number) => plural(count, { one: '1 found', other: `${count} found` }),
    notFound: 'Nobody fits that. Try fewer letters.',
    count: (here: number, away: number) =>
      away === 0
        ? `${here} here.`
        : plural(away, { one: `${here} here, 1 away.`, other: `${here} here, ${away} away.` }),
    none: 'No one is written down yet',
    noneWhy: 'Add people one by one, or bring in a list.',
    left: (count: number) =>
      plural(count, { one: '1 person who has left', other: `${count} people who have left` }),
    room: (room: string) => `Room ${room}`,
    where: {
      here: 'here',
      hospital: (since: string) => `in hospital since ${dates.dayMonth(since)}`,
      leave: (since: string) => `away since ${dates.dayMonth(since)}`,
      moved: (since: string) => `moved away ${dates.shortDate(since)}`,
      died: (since: string) => `died ${dates.shortDate(since)}`,
    },
    flags: {
      decisionEnded: (on: string) => `decision ended ${dates.dayMonth(on)}`,
      decisionStarts: (on: string) => `decision starts ${dates.dayMonth(on)}`,
      noDecision: 'no decision',
      otherDecision: 'decision for another test',
      refuses: 'has said no',
      caution: (what: string) => `unanswered: ${what}`,
      cautionNo: 'clinician says no',
      noPhoto: 'no photo',
      noBirthDate: 'no birth date',
      noPlan: 'no plan',
      reviewDue: 'plan review due',
      namesake: 'namesake',
    },
    wholeHome: {
      title: 'Test the whole home',
      lead: 'Everybody here becomes due, counted from this day. The policy says on which days.',
      caution: 'Ask your local health protection team first.',
      on: 'From which day?',
      askedBy: 'Who asked for it?',
      askedByHint: 'Such as the health protection team, with a name.',
      before: (day: string, who: string) => `From ${dates.date(day)}. Asked by ${who}.`,
      beforeTitle: 'Asked for so far',
      callOff: 'Call it off',
      callOffThis: (day: string) => `Call off the test from ${dates.date(day)}`,
      callOffTitle: 'Call off testing the whole home',
      callOffLead: 'It stays to be read. Nobody is due because of it from now on.',
      callOffOthers: 'Other reasons to test somebody stay.',
      callOffWhy: 'Why is it called off?',
      callOffWhyHint: 'Such as the wrong day, or new advice.',
      calledOff: (name: string, why: string) => `${name} called it off: ${why}`,
      gone: 'This was called off already.',
    },
    form: {
      addTitle: `Add a ${who.one}`,
      editTitle: (name: string) => `Amend: ${name}`,
      nameHint: 'As it stands in their papers.',
      calledHint: 'Leave it empty to use the first name.',
      bornHint: 'Staff ask for it to check who this is.',
      noteHint: 'Nothing about health here. That goes in the plan.',
      newUnit: 'Another part',
      unitName: 'Name of the new part',
      comingQuestion: `Is this ${who.one} new here?`,
      coming: {
        admission: 'Has just moved in',
        lives: 'Has lived here all along',
      },
      comingHint: 'A newcomer may need a test. The policy says when.',
      cameOn: 'Moved in on',
      already: (name: string, born: string) =>
        `${name}, born ${dates.date(born)}, is here already. Is it the same person?`,
      alreadyNoBirth: (name: string) => `${name} is here already. Is it the same person?`,
      see: 'See that page',
      namesakeOf: (name: string) => `Another person here is much the same: ${name}.`,
      namesakeWhy: 'Tell them apart with care.',
      photoHint: 'Only the face. Made small, and kept on this service alone.',
      photoTake: 'Pick or take a photo',
      photoOut: 'Take the photo out',
      photoBad: 'That picture could not be read. Try a photo from the camera.',
      photoIn: 'The photo is in. It is not kept yet.',
    },
  };
}
