import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BurstFinding, burstKey, isUnfinished, quiet, usualBurstRules } from './key-burst.ts';

const rules = usualBurstRules;

function press(keys: readonly string[], gap: number, start = 0, from = quiet) {
  let state = from;
  let finding: BurstFinding = { kind: 'hand' };
  keys.forEach((key, i) => {
    ({ state, finding } = burstKey(state, { key, at: start + i * gap }, rules));
  });
  return { state, finding };
}

const scanned = (code: string, end = 'Enter') => [...Array.from(code), end];

describe('telling a scanner from a hand', () => {
  it('reads a fast burst that ends with Enter or Tab', () => {
    expect(press(scanned('KX4T7QPM'), 8).finding).toEqual({ kind: 'scan', code: 'KX4T7QPM' });
    expect(press(scanned('KX4T7QPM', 'Tab'), 8).finding).toEqual({
      kind: 'scan',
      code: 'KX4T7QPM',
    });
  });

  it('keeps the group separator of a GS1 code', () => {
    expect(press(scanned('0109\u001d21AB'), 8).finding).toMatchObject({ code: '0109\u001d21AB' });
  });

  it('is not taken in by somebody typing, nor by a lone Enter', () => {
    expect(press(scanned('KX4T7QPM'), 140).finding).toEqual({ kind: 'hand' });
    expect(press(['Enter'], 0).finding).toEqual({ kind: 'hand' });
  });

  it('does not take two quick keys and Enter for a code', () => {
    expect(press(['4', '2', 'Enter'], 20).finding).toEqual({ kind: 'hand' });
  });

  it('lets the first key through and holds the rest of a burst back from the page', () => {
    expect(press(['K'], 8).finding).toEqual({ kind: 'first' });
    expect(press(['K', 'X'], 8).finding).toEqual({ kind: 'within' });
  });

  it('ignores the same code again within a second, and takes it after', () => {
    const once = press(scanned('KX4T7QPM'), 8);
    expect(press(scanned('KX4T7QPM'), 8, 500, once.state).finding.kind).toBe('repeat');
    expect(press(scanned('KX4T7QPM'), 8, 1100, once.state).finding.kind).toBe('scan');
  });

  it('never takes half a scan for a whole code', () => {
    const stuck = press(['K', 'X', '4'], 8);
    const rest = press(scanned('T7QPM2'), 8, 130, stuck.state);
    expect(rest.finding).toEqual({ kind: 'broken' });
    expect(press(scanned('KX4T7QPM'), 8, 2000, rest.state).finding.kind).toBe('scan');
  });

  it('takes another code at once', () => {
    const once = press(scanned('KX4T7QPM'), 8);
    expect(press(scanned('KX4T7QPN'), 8, 200, once.state).finding.kind).toBe('scan');
  });

  it('starts afresh when a hand has typed something before', () => {
    const typed = press(['1'], 0);
    expect(press(scanned('KX4T7QPM'), 8, 400, typed.state).finding).toMatchObject({
      code: 'KX4T7QPM',
    });
  });

  it('notices a scan that never ended', () => {
    const { state } = press(Array.from('KX4T7QPM'), 8);
    expect(isUnfinished(state, 60, rules)).toBe(false);
    expect(isUnfinished(state, 400, rules)).toBe(true);
    expect(isUnfinished(press(scanned('KX4T7QPM'), 8).state, 400, rules)).toBe(false);
  });
});

it('reads whatever a scanner sends, once, at any speed a scanner has', () => {
  const codes = fc
    .string({ minLength: 4, maxLength: 40 })
    .filter((code) => code.trim().length >= 4);
  fc.assert(
    fc.property(codes, fc.integer({ min: 1, max: rules.gapMs }), (code, gap) => {
      expect(press(scanned(code), gap).finding).toEqual({ kind: 'scan', code: code.trim() });
    }),
  );
});
