import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BLOCK, markPositions } from './marks.ts';

test('marks run from the head to nothing, and the further back the rarer', () => {
  fc.assert(
    fc.property(fc.nat(2_000_000), (head) => {
      const marks = markPositions(head);
      expect(marks[0]).toBe(head);
      expect(marks.at(-1)).toBe(0);
      expect(marks.length).toBeLessThanOrEqual(2 + Math.ceil(Math.log2(head + 1)));
      for (let i = 1; i < marks.length; i++) expect(marks[i]).toBeLessThan(marks[i - 1]!);
    }),
  );
});

test('whatever was lost, the common point is at most twice as far back, or a block more', () => {
  fc.assert(
    fc.property(fc.nat(300_000), fc.double({ min: 0, max: 1, noNaN: true }), (head, share) => {
      const lost = Math.floor(head * share);
      const found = markPositions(head).find((position) => position <= head - lost) ?? 0;
      expect(head - found).toBeLessThanOrEqual(2 * lost + BLOCK);
    }),
  );
});

test('marks further back than a block stand on block ends', () => {
  for (const position of markPositions(249_990)) {
    if (position < 249_990 - 2 * BLOCK) expect(position % BLOCK).toBe(0);
  }
});
