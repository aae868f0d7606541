import type { Outcome } from '../../results/facts.ts';
import type { CardName, ForWhom } from '../strip.ts';

/** Short words to the person, one thought a sentence. */
export function english() {
  const cards: Record<CardName, (whom: ForWhom) => string> = {
    why: () => 'A test can show if you are ill. It helps us to look after you.',
    who: ({ staff }) =>
      staff.length === 0 ? 'Two of us will come.' : `${both(staff, 'and')} will come.`,
    mask: () => 'They wear a mask and gloves. It is still them.',
    yes: () => 'First they ask you. You can say yes. You can say no.',
    help: ({ helps }) => `This helps you: ${sentence(helps)}`,
    tissue: () => 'Blow your nose in a tissue.',
    throat: () => 'Open your mouth wide. The soft tip touches the back of it. Count to ten.',
    nose: () => 'Then the soft tip goes in your nose. It may tickle.',
    both: () => 'The soft tip goes in your nose. First one side, then the other.',
    self: () => 'You can hold the stick. We help you.',
    stop: () => 'You can say stop. We stop at once.',
    tube: () => 'The tip goes in a tube.',
    done: () => 'All done. Well done.',
    reward: ({ reward }) => `Then: ${sentence(reward)}`,
    wait: ({ days }) =>
      `Now we wait. It can take ${days === 1 ? 'a day' : `${inWords(days)} days`}.`,
    result: () => 'We tell you what the test said.',
    room: () => 'If you are ill, you stay in your room for some days. We come to you.',
    fault: () => 'It is not your fault.',
    ask: () => 'Ask me any time.',
  };
  const results: Record<Outcome, readonly string[]> = {
    positive: [
      'The test found the germ.',
      'It is not your fault.',
      'You stay in your room for some days. We come to you.',
      'Tell us if you feel worse.',
    ],
    negative: ['The test did not find the germ.', 'If you feel ill, tell us.'],
    void: [
      'The test did not work.',
      'It is not your fault.',
      'We will ask if you want to try once more.',
    ],
    inconclusive: ['The test is not sure.', 'We will ask if you want to try once more.'],
    withdrawn: [
      'What we told you was not right.',
      'We are sorry.',
      'We wait for the right result.',
    ],
  };
  return {
    code: 'en-GB',
    /** A native reader has been over it. */
    checked: true,
    name: 'English',
    cards,
    results,
    title: (name: string) => `My test, ${name}`,
    story: (name: string) => `A story about my test. My name is ${name}.`,
    resultTitle: (name: string) => `For ${name}: your test`,
    now: 'Now',
    next: 'Next',
    last: 'That is all',
    onward: 'Next picture',
    before: 'Go back',
    stop: 'Stop',
    stopped: 'We stop. It is fine to stop.',
    readAloud: 'Read it to me',
    quiet: 'Stop reading',
    needsReader: '',
    when: (day: string) => `The test was on ${day}.`,
    questions: 'Ask me any time.',
  };
}

const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const inWords = (count: number): string => NUMBERS[count - 1] ?? String(count);

export const both = (names: readonly string[], and: string): string =>
  names.length < 2
    ? (names[0] ?? '')
    : `${names.slice(0, -1).join(', ')} ${and} ${names.at(-1) ?? ''}`;

/** The plan's own words, ended as a sentence. */
export const sentence = (text: string): string => {
  const trimmed = text.trim();
  return /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`;
};
