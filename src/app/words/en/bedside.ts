import type { LanguageTools } from '../language-tools.ts';

export function bedsideWords({ plural }: LanguageTools) {
  return {
    turnOf: (name: string) => `${name}'s turn`,
    stopFor: (name: string) => `Stop for ${name}`,
    whatHelps: 'What helps:',
    sayingStopWhen: (name: string) => `${name} is saying stop when`,
    likesToBeCalled: (name: string) => `Likes to be called ${name}.`,
    noneOfThese: 'None of these',
    /** Never the person's name: the choice is blind. */
    face: (place: number) => `Face ${place}`,
    choiceKeys: (count: number) => `Keys 1 to ${count} or arrows move. Enter picks.`,
    secondsToGo: (count: number) => plural(count, { one: 'second to go', other: 'seconds to go' }),
    secondsSoFar: (count: number) => plural(count, { one: 'second', other: 'seconds' }),
    longEnough: 'Long enough',
    pastTarget: (most: number) => `Past ${most} seconds. Come out now.`,
    target: ({ from, to }: { from: number; to: number }) =>
      from === to ? `${from} seconds` : `${from} to ${to} seconds`,
    dial: (target: string) => `Time in place. Aim for ${target}.`,
  };
}
