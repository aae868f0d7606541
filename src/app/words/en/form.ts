import type { LanguageTools } from '../language-tools.ts';

export function formWords({ plural }: LanguageTools) {
  return {
    problems: (count: number) =>
      plural(count, {
        one: 'There is 1 thing to put right',
        other: `There are ${count} things to put right`,
      }),
    problem: 'Put this right:',
    optional: 'can stay empty',
    pickOne: 'Pick one',
    close: 'Close',
    theme: 'Light or dark',
    themes: { auto: 'As the tablet is', day: 'Day', night: 'Night' },
  };
}
