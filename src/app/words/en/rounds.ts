import type { LanguageTools } from '../language-tools.ts';

export function roundWords({ dates, plural, list }: LanguageTools) {
  const people = (count: number) => plural(count, { one: '1 person', other: `${count} people` });
  return {
    askedFor: 'asked for',
    title: 'Rounds',
    of: (day: string) => `${dates.weekday(`${day}T12:00:00.000Z`)}'s round`,
    none: 'No round yet',
    noneWhy: 'Prepare one from the people who are due.',
    prepare: 'Prepare a round',
    line: (swabber: string, recorder: string, count: number) =>
      `${swabber} swabs, ${recorder} records. ${people(count)}.`,
    courier: (at: string, packBy: string) =>
      `Courier ${dates.time(at)}. Pack by ${dates.time(packBy)}.`,
    tally: (done: number, of: number) => `${done} of ${of} tally so far.`,
    frame: (day: string) => `The round of ${dates.date(day)}, person by person`,
    so: {
      waiting: 'waiting',
      'in-turn': (names: string) => `now, with ${names}`,
      declined: 'said no',
      'not-now': 'not now',
      asleep: 'asleep',
      away: 'not here',
      stopped: 'stopped',
      'kit-fault': 'kit failed: try again',
      'not-them': 'somebody else answered: check',
      interrupted: 'broken off',
    },
    siteShort: { both: 'both nostrils', throat: 'throat and nose', self: 'by themselves' },
    goOn: (name: string) => `Carry on with ${name}`,
    start: (name: string) => `Start with ${name}`,
    pack: 'To the pack table',
    handOver: 'Hand over',
    fromPaper: 'Type in from paper',
    register: 'Register the tests',
    results: 'Results',
    edit: 'Change this round',
    close: 'Close the round',
    closed: 'This round is closed. It tallies.',
    early: 'The courier is here early',
    closedOn: (at: string) => `Closed ${dates.dayTime(at)}.`,
    spoiled: (count: number) =>
      plural(count, { one: '1 kit spoiled', other: `${count} kits spoiled` }),
    counts: (opened: number, packed: number, spoiled: number) =>
      `Kits opened ${opened} = packed ${packed} + spoiled ${spoiled}.`,
    notYet: (missing: readonly string[]) => `Not packed yet: ${list(missing)}.`,
    people,
  };
}
