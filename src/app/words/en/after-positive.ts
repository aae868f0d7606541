import type { LanguageTools } from '../language-tools.ts';

export function afterPositiveWords({ dates }: LanguageTools) {
  return {
    ringNow: (hours: number) =>
      `Ring the doctor now. ${hours} hours are left to begin a treatment.`,
    windowOver: 'The hours for a treatment may be over. Ask the doctor all the same.',
    windowSince: {
      signs: (day: string) => `Counted from the first sign, ${dates.date(day)}.`,
      contact: (day: string) => `Counted from the contact, ${dates.date(day)}.`,
      swab: (day: string) => `No first sign is known. Counted from the swab, ${dates.date(day)}.`,
    },
    calendar: 'Isolation, day by day',
    dayNumber: (number: number) => `Day ${number}`,
    dayName: (day: string) => dates.date(day),
    ends: (at: string) => `It ends ${dates.dayTime(at)}, if the team agrees.`,
    near: 'Who may have been near',
    nearWhy: 'From the records of the last 2 days. Ask who else was there.',
    nearBy: {
      room: 'same room',
      unit: 'same part of the home',
      after: 'swabbed by the same pair later that day',
    },
    nearLine: (name: string, why: string) => `${name}: ${why}`,
    staffLine: (name: string, day: string) => `${name}: in a turn with them, ${dates.date(day)}`,
    nobody: 'The records name nobody. Ask on the floor.',
  };
}
