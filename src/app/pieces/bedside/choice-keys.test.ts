import { describe, expect, it } from 'vitest';
import { choiceMove } from './choice-keys.ts';

const at = (focused: number, lastKeyAt?: number) => ({ count: 5, focused, lastKeyAt });

describe('keys in a blind choice', () => {
  it('moves to the choice with that digit and does not pick it', () => {
    expect(choiceMove(at(0), { key: '3', at: 0 })).toEqual({ to: 2 });
  });

  it('takes no digit past the last choice', () => {
    expect(choiceMove(at(0), { key: '6', at: 0 })).toBe('pass');
    expect(choiceMove(at(0), { key: '0', at: 0 })).toBe('pass');
  });

  it('goes round with the arrows', () => {
    expect(choiceMove(at(4), { key: 'ArrowDown', at: 0 })).toEqual({ to: 0 });
    expect(choiceMove(at(0), { key: 'ArrowUp', at: 0 })).toEqual({ to: 4 });
    expect(choiceMove(at(2), { key: 'Home', at: 0 })).toEqual({ to: 0 });
    expect(choiceMove(at(2), { key: 'End', at: 0 })).toEqual({ to: 4 });
  });

  it('lets Enter and Tab do their ordinary work', () => {
    expect(choiceMove(at(2, 0), { key: 'Enter', at: 400 })).toBe('pass');
    expect(choiceMove(at(2, 0), { key: 'Tab', at: 400 })).toBe('pass');
  });

  it('lets Tab out however fast it comes, with Shift before it or held down', () => {
    expect(choiceMove(at(2, 1000), { key: 'Tab', at: 1008 })).toBe('pass');
  });

  it('does not let a scanner pick somebody: keys faster than a hand do nothing', () => {
    expect(choiceMove(at(2, 1000), { key: '4', at: 1008 })).toBe('ignore');
    expect(choiceMove(at(2, 1008), { key: 'Enter', at: 1016 })).toBe('ignore');
  });
});
