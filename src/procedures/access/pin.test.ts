import { describe, expect, it } from 'vitest';
import { foldName, pinFault } from './pin.ts';

describe('a new PIN', () => {
  it('may be any six to twelve digits that are not too plain', () => {
    for (const pin of ['402917', '100200', '8675309', '314159265358', '135790'])
      expect([pin, pinFault(pin)]).toEqual([pin, undefined]);
  });

  it('is refused when it is short, long or no number', () => {
    expect(pinFault('')).toBe('too-short');
    expect(pinFault('40291')).toBe('too-short');
    expect(pinFault('4029174029171')).toBe('too-long');
    expect(pinFault('40291a')).toBe('not-digits');
    expect(pinFault(' 402917')).toBe('not-digits');
    expect(pinFault('４０２９１７')).toBe('not-digits');
  });

  it('is refused when a colleague would try it first', () => {
    for (const pin of [
      '111111',
      '123456',
      '654321',
      '890123',
      '121212',
      '123123',
      '112233',
      '998877',
      '00000000',
    ])
      expect([pin, pinFault(pin)]).toEqual([pin, 'too-plain']);
  });
});

describe('a typed name', () => {
  it('is found whatever its spaces, letters and accents are made of', () => {
    expect(foldName('  Zoe\u0308  VALE ')).toBe(foldName('Zoë Vale'));
  });
});
