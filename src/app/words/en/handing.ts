import type { LanguageTools } from '../language-tools.ts';

export function handingWords({ dates, plural, list, number }: LanguageTools) {
  const bags = (count: number) => plural(count, { one: '1 bag', other: `${count} bags` });
  return {
    title: 'Hand over',
    due: (at: string) => `The courier is due ${dates.dayTime(at)}.`,
    bookedBy: (who: string) => `${who} booked it and has it in hand.`,
    noBox: 'No box is shut yet. Pack the bags first.',
    toPack: 'To the pack table',
    /** Not how many are in it: whoever counts must not be told first. */
    box: 'The box',
    apart: (metres: number) => `Stand ${number(metres)} m apart. Count the bags aloud together.`,
    count: 'How many did you count?',
    seal: 'Seal or reference',
    courier: 'Name of the courier, or of the van',
    time: 'The time is kept when you press.',
    press: 'The box has left',
    fill: 'Fill this in.',
    notANumber: 'Write how many, in figures.',
    handed: (count: number, at: string, courier: string, seal: string) =>
      `${bags(count)} went ${dates.dayTime(at)} with ${courier}. Seal ${seal}.`,
    twice: 'Two counts were written for this box. A senior decides.',
    allGone: 'Every box has left. Register the tests today.',
    here: 'Still in the house',
    oldest: (at: string) => `The oldest swab is from ${dates.dayTime(at)}.`,
    keeps: (until: string, hours: number, limit: number) =>
      `Good until ${dates.dayTime(until)}: ${hours} h left of ${limit} h.`,
    where: (temperature: string) => `Keep the box at ${temperature}, shut, away from food.`,
    leaflet: 'The leaflet in the kit comes first.',
    tooOld: (since: string) => `Too old since ${dates.dayTime(since)}.`,
    tooOldHow: 'Ask the laboratory before you send it.',
    dueAgain: (names: readonly string[]) =>
      plural(names.length, {
        one: `${list(names)} is due again.`,
        other: `${list(names)} are due again.`,
      }),
    missed: 'The courier did not come',
    missedAt: (at: string) => `The courier due ${dates.dayTime(at)} did not come.`,
    bookAgain: 'Book again',
    bookLead: 'Ring for another collection. Then write it here.',
    when: 'When do they come?',
    who: 'Who has it in hand?',
    booked: 'Booked: keep it',
    laterThanKept: 'That is after the tubes are too old. Ask for an earlier one.',
    register: 'Register the tests',
  };
}
