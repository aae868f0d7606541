import type { LanguageTools } from '../language-tools.ts';

/** Results that do not fit what is known: what was seen, how likely a swap is, what to do meanwhile. */
export function fitWords({ dates, number }: LanguageTools) {
  /** Two figures that count: nobody needs 1,987. */
  const round = (times: number) => number(Number(times.toPrecision(times < 10 ? 1 : 2)));
  return {
    title: 'A result does not fit',
    why: {
      'positive-again': (name: string, on: string) =>
        `${name} is positive, and was positive on ${dates.date(on)}. A second one so soon is not expected.`,
      'negative-between': (name: string, from: string, to: string) =>
        `${name} is negative. It was positive on ${dates.date(from)}. It was positive again on ${dates.date(to)}.`,
      crossed: (negative: string, positive: string) =>
        `${negative} had reason to be positive and is negative. ${positive}, who came next, is positive for no known reason.`,
    },
    /** `odds` is swap : chance. */
    odds: (odds: number) =>
      odds >= 1
        ? `A swap of tubes is about ${round(odds)} times as likely as chance.`
        : `Chance is about ${round(1 / odds)} times as likely as a swap of tubes.`,
    oddsNote: 'The sum rests on numbers in the policy. It helps you decide. It decides nothing.',
    policy: {
      group: 'Identity, and results that do not fit',
      inTenThousand: (count: number) => `${number(count)} in 10,000`,
      known: (count: number) => number(count),
      days: (count: number) => number(count),
      rows: {
        knownByAtLeast: 'Colleagues who must know somebody who cannot say their name',
        identifier: 'How the number of a person is made',
        titleTold: 'Where another home used one of our codes, it is told our name',
        swapChance: 'How often a tube is swapped',
        sensitivity: 'Of those who have it, positive',
        specificity: 'Of those who have it not, negative',
        background: 'Chance of a positive, nothing known',
        contact: 'The same after contact',
        symptoms: 'The same with symptoms',
        afterPositive: 'The same soon after a positive',
        negativeBetweenDays: 'Most days between two positives with a negative between them',
      },
    },
    meanwhile: 'Until you decide, care for each of them as if positive. Nothing is thrown away.',
    ask: 'Ask the laboratory to look at the tube and its code again. Test again if in doubt.',
  };
}
