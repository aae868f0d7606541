import type { LanguageTools } from '../language-tools.ts';

const outOfTen = (chance: number): string => {
  if (chance > 0.95) return 'almost sure';
  if (chance < 0.05) return 'hardly likely';
  return `about ${Math.round(chance * 10)} in 10`;
};

/** A floor says how much at the least; a floor near nought says nothing. */
const atLeast = (chance: number, least: boolean): string => {
  if (!least) return outOfTen(chance);
  return chance < 0.05 ? 'not known' : `${outOfTen(chance)}, or better`;
};

export function callWords({ dates, plural }: LanguageTools) {
  const hours = (count: number | undefined): string =>
    count === undefined ? 'not known' : `${Math.round(count)} h`;
  return {
    title: 'Who to ring about results',
    open: 'Call list',
    none: 'No result is late.',
    soon: 'Not late yet',
    late: 'Late',
    code: 'Code',
    since: (count: number) => `${count} hours since the swab.`,
    due: (at: string) => `Due by ${dates.dayTime(at)}.`,
    nextCall: (at: string) => `Ring again ${dates.dayTime(at)}.`,
    lastCall: (who: string, at: string) => `${who} rang ${dates.dayTime(at)}.`,
    chances: 'Chance that it comes',
    tonight: (chance: number, least: boolean) => `By 10 tonight: ${atLeast(chance, least)}.`,
    byLimit: (limit: number, chance: number, least: boolean) =>
      `By ${limit} hours: ${atLeast(chance, least)}.`,
    ever: (chance: number) => `At all: ${atLeast(chance, true)}.`,
    noIdea: 'None here took so long before.',
    ringNow: 'Ring now.',
    range: (lower: number, upper: number) =>
      `It may be ${Math.round(lower * 100)} to ${Math.round(upper * 100)} in 100.`,
    historyTitle: 'How long results take here',
    basis: (ended: number, waiting: number) =>
      `From ${plural(ended, { one: '1 result', other: `${ended} results` })} here. ${waiting} still out.`,
    made: (count: number) =>
      `That is few. So ${count} guessed waits from the policy are counted too.`,
    half: (count: number | undefined) => `Half are here within ${hours(count)}.`,
    groups: { laboratory: 'By laboratory', weekday: 'By day of the swab', courier: 'By courier' },
    weekdays: {
      1: 'Monday',
      2: 'Tuesday',
      3: 'Wednesday',
      4: 'Thursday',
      5: 'Friday',
      6: 'Saturday',
      7: 'Sunday',
    } as Record<string, string>,
    columns: { group: 'Which', results: 'Results', half: 'Half within', nine: '9 in 10 within' },
    hours,
    notWritten: 'not written down',
    changed: (before: number | undefined, recent: number | undefined) =>
      `It has changed. Half took ${hours(before)} before. Half take ${hours(recent)} now.`,
    unchanged: 'The last 4 weeks look like the time before.',
    p: (p: number) => `Log-rank test, p ${p < 0.001 ? 'under 0.001' : `= ${p.toFixed(3)}`}.`,
    tooFew: 'There are too few results to tell of a change.',
    caution: 'These are chances from the past. They promise nothing.',
  };
}
