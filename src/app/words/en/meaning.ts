import type { NotTested } from '../../../care/results/house-chance.ts';
import type { StrengthReason } from '../../../care/results/swab-strength.ts';
import type { LanguageTools } from '../language-tools.ts';

const of100 = (chance: number): string => {
  const count = Math.round(chance * 100);
  return count === 0 ? 'fewer than 1' : count === 100 ? 'more than 99' : `about ${count}`;
};

export function meaningWords({ plural, list }: LanguageTools) {
  const strength: Record<StrengthReason, string> = {
    site: 'Where it was taken: some sites find less.',
    day: 'The day it was taken: too early or late finds less.',
    short: 'The swab was in for less time than asked.',
    'long-way': 'It waited long before it was handed over.',
  };
  const not: Record<NotTested, string> = {
    'not-swabbed': 'not swabbed in the last 7 days',
    declined: 'a turn, but no swab',
    void: 'the swab gave no yes or no',
    waiting: 'the result has not come',
    held: 'the result is held',
    away: 'away',
  };
  return {
    title: 'What this result means',
    sentence: (count: number, result: 'positive' | 'negative') =>
      `Of 100 people like this with a ${result} test, ${of100(count)} ${result === 'positive' ? 'have it' : 'still have it'}.`,
    range: (lower: number, upper: number) =>
      `It may be ${Math.round(lower * 100)} to ${Math.round(upper * 100)} of 100.`,
    picture: (count: number) => `100 people. ${of100(count)} of them are filled in.`,
    have: 'has it',
    haveNot: 'does not',
    before: 'Before the test',
    beforeHint: 'Move it if you know more. It is not kept.',
    of100: (chance: number) => `${Math.round(chance * 100)} of 100`,
    usual: 'Back to the policy',
    known: {
      background: 'Nothing known: no signs, no contact.',
      contact: 'A contact was noted.',
      symptoms: 'Signs were noted.',
    },
    cases: 'Somebody else here had it in the last 2 weeks.',
    less: 'Why this swab may find less',
    strength,
    noDay: 'The day they met it is not known.',
    counted: (count: number) => `${count} negatives of these days count together.`,
    cautions: 'Before you use this',
    cautionNegative: 'A negative does not rule it out. If they look ill, act as if they have it.',
    cautionPositive: 'A positive can be wrong. Act on it all the same.',
    cautionAlways: 'This is a chance, not a finding about the person. The doctor decides.',
    source: 'The figures are from your policy. See who gave them there.',

    houseTitle: 'Was somebody missed?',
    houseOpen: 'Was somebody missed?',
    houseSentence: (missed: number) =>
      `Of 100 homes like this, ${of100(missed)} have somebody who was missed.`,
    houseWhy: 'Nobody can be sure. This is the chance, not a pass.',
    noPolicy: 'The policy gives no figures for this.',
    nobody: 'There is nobody to count here.',
    tested: (tested: number, all: number) =>
      `${tested} of ${all} have a negative from the last 7 days.`,
    positives: (count: number) =>
      plural(count, {
        one: '1 person has it already and is not counted.',
        other: `${count} people have it already and are not counted.`,
      }),
    findOne: (chance: number) =>
      `Say one person has it. These swabs find it ${of100(chance)} times in 100.`,
    wanted: 'How sure do you want to be?',
    wantedOption: (percent: number) => `${percent} of 100`,
    more: (count: number) =>
      count === 0
        ? 'You are that sure now. No more tests are asked.'
        : plural(count, {
            one: 'Test 1 more person. Begin at the top of the list.',
            other: `Test ${count} more people. Begin at the top of the list.`,
          }),
    notEnough: 'Testing everybody once is not enough for that. Test again in a few days.',
    inAll: (count: number) => `To find one case, you need ${count} negatives in all.`,
    inAllNever: 'One round of swabs cannot find one case that surely.',
    checked: (simulated: number) =>
      `Checked by 20,000 made-up rounds: ${(simulated * 100).toFixed(1)} of 100.`,
    apart: 'It counts each person by themselves. In an outbreak the true chance is higher.',
    listTitle: 'Who was tested, and who not',
    listCaption: 'Each person, in the order in which to test',
    columns: { person: 'Person', why: 'Last 7 days', before: 'Before', after: 'Now' },
    negative: 'negative',
    not,
    policy: {
      group: 'What a result means',
      sensitivity: 'Finds it when it is there',
      specificity: 'Says no when it is not there',
      of: (right: number, all: number) => `${right} of ${all}`,
      share: (percent: number) => `${percent} of 100`,
      siteYield: 'By where the swab was',
      sites: (both: string, nose: string, throat: string) =>
        `Throat and nose: ${both}. Nose: ${nose}. Throat: ${throat}.`,
      shortSwab: 'A swab that was too short finds',
      longWay: 'A long way to the laboratory',
      way: (hours: number, share: string) => `Past ${hours} h it finds ${share}.`,
      repeat: 'Two swabs miss alike',
      beforeTest: 'The chance before a test',
      befores: (none: readonly string[], cases: readonly string[]) =>
        `Unknown, contact, signs: ${none.join(', ')}. With a case here: ${cases.join(', ')}.`,
      waits: 'Waits, until there are results enough',
      waited: (enough: number, hours: readonly number[]) =>
        `Until ${enough} results: ${list(hours.map(String))} h.`,
      wantedCertainty: 'How sure the home wants to be',
      treatment: 'A treatment helps within',
    },
  };
}
