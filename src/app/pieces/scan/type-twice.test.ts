import { describe, expect, it } from 'vitest';
import { codeGroups, plainCode } from './code-groups.ts';
import { typeEntry, typeStart } from './type-twice.ts';

const twice = (first: string, again: string) =>
  typeEntry(typeEntry(typeStart, first, 4).state, again, 4);

describe('typing a code by hand', () => {
  it('takes the code when both tries agree, whatever the spaces and capitals', () => {
    expect(twice('kx4t 7qpm', 'KX4T7QPM')).toEqual({ state: typeStart, code: 'KX4T7QPM' });
  });

  it('says where two tries part and starts both again', () => {
    expect(twice('KX4T7QPM', 'KX4T1QPM')).toEqual({
      state: { at: 'first', trouble: { kind: 'differ', place: 5 } },
      code: undefined,
    });
  });

  it('does not guess a place when one try is longer', () => {
    expect(twice('KX4T7QPM', 'KX4T7QP').state).toMatchObject({ trouble: { kind: 'length' } });
  });

  it('asks again for a code that is too short, keeping the first try', () => {
    expect(typeEntry(typeStart, 'KX4', 4).state).toMatchObject({
      at: 'first',
      trouble: { kind: 'short' },
    });
    const again = typeEntry(typeEntry(typeStart, 'KX4T7QPM', 4).state, ' ', 4);
    expect(again.state).toMatchObject({
      at: 'again',
      first: 'KX4T7QPM',
      trouble: { kind: 'short' },
    });
  });
});

describe('a code to look at', () => {
  it('stands in groups of four', () => {
    expect(codeGroups('KX4T7QPM21')).toEqual(['KX4T', '7QPM', '21']);
    expect(codeGroups('')).toEqual([]);
  });
  it('is made plain when typed', () => expect(plainCode(' kx4t 7qpm ')).toBe('KX4T7QPM'));
});
