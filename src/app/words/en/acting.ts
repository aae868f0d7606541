import type { ActionKind } from '../../../care/results/facts.ts';
import type { LanguageTools } from '../language-tools.ts';

export function actingWords({ dates, plural }: LanguageTools) {
  /** What is asked when the result changed after this was done. */
  const again: Record<ActionKind, string> = {
    'tell-person': 'Tell them that the result has changed.',
    'tell-representative': 'Tell the family that the result has changed.',
    'tell-doctor': 'Tell the doctor that the result has changed.',
    'tell-health-protection': 'Tell the health protection team that it has changed.',
    isolate: 'End the isolation, or say why it goes on.',
    'find-contacts': 'Look again at who was near. They may be free now.',
    'test-home': 'Ask again if the whole home is to be tested.',
    'test-again': 'Look again if another test is needed.',
    'ask-laboratory': 'Ask the laboratory again.',
  };
  return {
    again,
    title: (name: string, outcome: string) => `${name}: ${outcome}`,
    swabbed: (day: string, dated: string) =>
      `Swabbed on ${dates.date(day)}. Result dated ${dates.shortDate(dated)}.`,
    entered: (who: string, at: string) => `Entered by ${who}, ${dates.dayTime(at)}.`,
    story: 'How do we know?',
    died: (name: string, on: string) => `${name} died on ${dates.date(on)}.`,
    diedHow: 'Nobody tells them. No letter goes out. Speak with the family, not by post.',
    moved: (name: string, on: string) => `${name} moved on ${dates.date(on)}.`,
    movedHow: 'The manager tells the new home, their doctor and the health protection team.',
    changed: 'The result has changed.',
    changedFrom: (outcome: string, at: string, who: string) =>
      `It was ${outcome}, entered ${dates.dayTime(at)} by ${who}.`,
    changedHow: 'All that was done on the old one is looked at again below.',
    isolation: (from: string, until: string) =>
      `Isolation: from ${dates.shortDate(from)} until the end of ${dates.shortDate(until)}.`,
    isolationWhy: (source: string) => `The day of the swab is day 0. ${source}`,
    caution: 'A result is not a diagnosis. Worse, or worried? Ring the doctor. In danger: 999.',
    teamDecides: 'The health protection team may decide otherwise. Then do as they say.',
    waiting: 'There is no result yet.',
    held: 'Something does not fit. Nobody acts until a senior has settled it.',
    withdrawn: 'No result of this test stands. There is nothing to act on.',
    takenOut: 'A senior settled that this result does not stand.',
    toTest: 'See the test',
    todo: 'To do',
    allDone: 'All of this is settled.',
    due: (at: string) => `Due ${dates.dayTime(at)}`,
    late: (at: string) => `Late: was due ${dates.dayTime(at)}`,
    atOnce: 'Do it now',
    forRole: (due: string, role: string) => `${due}, by a ${role}.`,
    named: (who: string) => `${who} has it in hand.`,
    nobody: 'Nobody has it in hand yet.',
    before: (what: string, who: string, at: string) =>
      `${what}: ${who} did this ${dates.dayTime(at)}, on the old result.`,
    done: (who: string, at: string) => `Done by ${who}, ${dates.dayTime(at)}.`,
    notNeeded: (who: string, at: string) => `Not needed, says ${who}, ${dates.dayTime(at)}.`,
    stopped: {
      died: 'Not asked any more: they died.',
      moved: 'Not asked any more: they moved.',
    },
    policy: (source: string) => `Policy: ${source}`,
    give: 'Who and when',
    giveWhat: (what: string) => `Who and when: ${what}`,
    doneNow: 'Done',
    doneWhat: (what: string) => `Done: ${what}`,
    notNow: 'Not needed',
    notWhat: (what: string) => `Not needed: ${what}`,
    who: 'Who does it?',
    when: 'By when?',
    note: 'Note',
    why: 'Why is it not needed?',
    keep: 'Keep it',
    back: 'Back',
    fillWho: 'Pick who.',
    fillWhen: 'Say by when.',
    fillWhy: 'Write why.',
    left: (count: number) => plural(count, { one: '1 left to do.', other: `${count} left to do.` }),
  };
}
