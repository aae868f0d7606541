import type { LanguageTools } from '../language-tools.ts';

export function frameWords({ list }: LanguageTools) {
  return {
    person: 'Person',
    /** The nine beads of a test's wire, in order. */
    steps: {
      who: 'who',
      consent: 'consent',
      label: 'label',
      swab: 'swab',
      seal: 'seal',
      pack: 'pack',
      handOver: 'hand over',
      register: 'register',
      result: 'result',
    },
    /** What each shape means. */
    states: {
      todo: 'to do',
      hand: 'in hand',
      done: 'done',
      unneeded: 'not needed',
      look: 'look at this',
    },
    key: 'What the beads mean',
    wireOf: (name: string) => `${name}: how far`,
    bead: ({ step, state }: { step: string; state: string }) => `${step}: ${state}`,
    beadOf: ({ name, step, state }: { name: string; step: string; state: string }) =>
      `${name}, ${step}: ${state}`,
    wireSaid: ({ name, said }: { name: string; said: string }) => `${name}: how far. ${said}`,
    now: (step: string) => `Now: ${step}.`,
    next: (step: string) => `Next: ${step}.`,
    lookAt: (steps: readonly string[]) => `Look at this: ${list(steps)}.`,
    doneOf: ({ done, of }: { done: number; of: number }) => `${done} of ${of} done.`,
    tallies: 'All settled.',
    tallied: ({ done, of }: { done: number; of: number }) => `${done} of ${of} tally so far.`,
  };
}
