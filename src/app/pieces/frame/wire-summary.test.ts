import { describe, expect, it } from 'vitest';
import { english } from '../../words/en.ts';
import type { BeadState } from './bead-state.ts';
import { sayWire, summariseWire, type WireStep } from './wire-summary.ts';

const words = english({ timeZone: 'Europe/London', person: 'resident' });
const labels = Object.values(words.frame.steps);
const wire = (...states: readonly BeadState[]): readonly WireStep[] =>
  states.map((state, i) => ({ key: String(i), label: labels[i]!, state }));

describe('a wire in words', () => {
  it('says how far a test is and what is in hand', () => {
    expect(sayWire(wire('done', 'done', 'hand', 'todo'), words)).toBe('2 of 4 done. Now: label.');
  });

  it('says what comes next when nothing is in hand', () => {
    expect(sayWire(wire('done', 'todo', 'todo'), words)).toBe('1 of 3 done. Next: consent.');
  });

  it('puts what needs somebody before what is in hand', () => {
    expect(sayWire(wire('look', 'look', 'hand', 'todo'), words)).toBe(
      '0 of 4 done. Look at this: who and consent. Now: label.',
    );
  });

  it('does not count steps that are not needed, and tallies without them', () => {
    const refused = wire('done', 'done', 'unneeded', 'unneeded');
    expect(summariseWire(refused)).toMatchObject({ done: 2, of: 2, tallies: true });
    expect(sayWire(refused, words)).toBe('All settled.');
  });

  it('does not tally while one bead is open', () => {
    expect(summariseWire(wire('done', 'todo')).tallies).toBe(false);
    expect(summariseWire(wire('done', 'look')).tallies).toBe(false);
  });
});
