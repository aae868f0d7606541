import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { got } from '../../statistics/testing.ts';
import { definition } from './reorder.ts';

interface Answer {
  readonly reorderPoint: { readonly kits: number; readonly chanceItLasts: number };
  readonly stock: Readonly<Record<string, number>>;
}

const ask = (input: object): Answer =>
  got(definition.run(v.parse(definition.input, input))) as Answer;

describe('tallyround reorder', () => {
  const even = [2, 3, 2, 3, 2, 3, 2, 3];

  it('counts no kit that has expired, or that expires before a late delivery', () => {
    const dead = ask({
      demand: even,
      lead: { meanDays: 5 },
      batches: [{ quantity: 50, expiryDay: 0 }],
    });
    expect(dead.stock).toMatchObject({
      onHand: 0,
      expired: 50,
      lastsLead: 0,
      expectedWaste: 50,
    });
    // Nothing is left, so it runs out unless nothing is asked for in five days.
    expect(dead.stock['stockoutInLead']).toBeGreaterThan(0.9999);
    const mixed = ask({
      demand: even,
      lead: { meanDays: 5, sdDays: 1 },
      batches: [
        { quantity: 7, expiryDay: 0 },
        { quantity: 11, expiryDay: 6 },
        { quantity: 13, expiryDay: 7 },
      ],
    });
    expect(mixed.stock).toMatchObject({
      onHand: 24,
      expired: 7,
      expiresInLead: 11,
      lastsLead: 13,
    });
  });

  // R: pnbinom(80, size = 57^2 / (1501 - 57), mu = 57, lower.tail = FALSE), 1501 = 57 + 19^2 * 2^2.
  it('judges running out by the law the reorder point goes by', () => {
    const question = { demand: [20, 20, 20, 20, 20, 20], lead: { meanDays: 3, sdDays: 2 } };
    const found = ask({ ...question, batches: [{ quantity: 80, expiryDay: 90 }] });
    expect(found.reorderPoint.kits).toBe(132);
    expect(found.stock['stockoutInLead']).toBeCloseTo(0.224320912868771, 12);
    const just = ask({ ...question, batches: [{ quantity: 132, expiryDay: 90 }] });
    expect(just.stock['stockoutInLead']).toBeCloseTo(1 - found.reorderPoint.chanceItLasts, 12);
  });

  // R: y <- rep(c(0,0,0,0,0,0,20), 3); m <- 3 * 0.95 * 20/7; s <- m^2 / (3 * var(y) - m);
  // qnbinom(0.95, size = s, mu = m); pnbinom(13, size = s, mu = m, lower.tail = FALSE)
  it('lets demand vary as the history does: twenty in one day of seven', () => {
    const demand = [1, 2, 3].flatMap(() => [0, 0, 0, 0, 0, 0, 20]);
    const found = ask({
      demand,
      lead: { meanDays: 3 },
      batches: [{ quantity: 13, expiryDay: 30 }],
    });
    expect(found.reorderPoint.kits).toBe(33);
    expect(found.reorderPoint.chanceItLasts).toBeCloseTo(0.951495791194663, 10);
    expect(found.stock['stockoutInLead']).toBeCloseTo(0.198993847233365, 10);
  });
});
