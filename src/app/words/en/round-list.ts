import type { RoundStage } from '../../../care/rounds/progress.ts';
import type { LanguageTools } from '../language-tools.ts';

export function roundListWords({ dates, plural }: LanguageTools) {
  const stages: Record<RoundStage, string> = {
    planned: 'Planned',
    swabbing: 'Under way',
    packing: 'To pack and close',
    courier: 'Waits for the courier',
    registering: 'To register',
    results: 'Results to come',
    acting: 'Results to act on',
    settled: 'All settled',
  };
  return {
    stages,
    coming: 'Planned',
    open: 'Not finished',
    settled: 'Finished',
    /** Thursday 26 November */
    title: (day: string) => dates.day(`${day}T12:00:00.000Z`),
    courier: (at: string) => `Courier ${dates.time(at)}`,
    people: (count: number) => plural(count, { one: '1 person', other: `${count} people` }),
    pair: (swabber: string, recorder: string) => `${swabber} and ${recorder}`,
    tally: (opened: number, packed: number, spoiled: number) =>
      opened === 0
        ? 'No kit opened yet.'
        : `${opened} opened = ${packed} packed + ${spoiled} spoiled.`,
    offBy: (count: number) =>
      plural(count, {
        one: '1 kit not accounted for yet.',
        other: `${count} kits not accounted for yet.`,
      }),
    notRegistered: (count: number) =>
      plural(count, { one: '1 not registered', other: `${count} not registered` }),
    noResult: (count: number) =>
      plural(count, { one: '1 result to come', other: `${count} results to come` }),
    older: 'Show older rounds',
  };
}
