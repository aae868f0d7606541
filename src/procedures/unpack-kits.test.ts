import { describe, expect, it } from 'vitest';
import { Trial } from '../../test/trial/home.ts';
import { kitCode as codeText } from '../../test/trial/round.ts';
import type { Code } from '../care/kind.ts';
import { deliveriesOf } from '../care/supplies/deliveries.ts';
import { stockOf } from '../care/supplies/stock.ts';
import type { Day } from '../care/time.ts';
import { putKitAside, receiveKits } from './supplies.ts';
import { amendDelivery, takeCodeOut, unpackKit } from './unpack-kits.ts';

const kitKind = 'single-swab';
const kitCode = (number: number) => codeText(number) as Code;
const expires = '2026-09-30' as Day;

function box(more: { lot?: string; expires?: Day; count?: number } = {}) {
  const trial = new Trial({ on: '2026-03-03' });
  trial.by = trial.staff('Jonah', 'senior');
  receive(trial, more);
  const { id: delivery } = deliveriesOf(trial.home, kitKind)[0]!;
  const scan = (code: Code) => unpackKit(trial.home, { kitKind, delivery, code }, trial.doing);
  return { trial, delivery, scan };
}

function receive(trial: Trial, more: { lot?: string; expires?: Day; count?: number }) {
  const came = { kitKind, lot: 'WS-1', expires, count: 20, codes: [], ...more };
  return trial.must(receiveKits(trial.home, came, trial.doing));
}

const lots = (trial: Trial) => stockOf(trial.home, kitKind).lots;

describe('unpacking a delivery', () => {
  it('a scanned code tells its lot and expiry from then on', () => {
    const { trial, scan } = box();
    trial.must(scan(kitCode(1)));
    const lot = stockOf(trial.home, kitKind).lotOfCode.get(kitCode(1));
    expect(lot).toMatchObject({ lot: 'WS-1', expires, left: 20 });
  });

  it('a code scanned twice is told, with its lot', () => {
    const { trial, scan } = box();
    trial.must(scan(kitCode(1)));
    expect(trial.refused(scan(kitCode(1)))).toMatchObject({ reason: 'code-in-stock', lot: 'WS-1' });
  });

  it('a code of another lot or of no kit is told', () => {
    const { trial, scan } = box();
    receive(trial, { lot: 'WS-2' });
    const second = deliveriesOf(trial.home, kitKind)[0]!.id;
    trial.must(unpackKit(trial.home, { kitKind, delivery: second, code: kitCode(7) }, trial.doing));
    expect(trial.refused(scan(kitCode(7)))).toMatchObject({ reason: 'code-in-stock', lot: 'WS-2' });
    expect(trial.refused(scan('5012345678900' as Code))).toMatchObject({
      reason: 'code-malformed',
    });
  });

  it('a kit put aside is never stock again', () => {
    const { trial, scan } = box();
    const aside = { kitKind, code: kitCode(3), why: 'damaged' } as const;
    trial.must(putKitAside(trial.home, aside, trial.doing));
    expect(trial.refused(scan(kitCode(3)))).toMatchObject({ reason: 'code-put-aside' });
  });

  it('a kit scanned by mistake is taken out, and only that one', () => {
    const { trial, delivery, scan } = box();
    trial.must(scan(kitCode(1)));
    trial.must(scan(kitCode(2)));
    trial.must(takeCodeOut(trial.home, { kitKind, delivery, code: kitCode(1) }));
    expect([...deliveriesOf(trial.home, kitKind)[0]!.codes.keys()]).toEqual([kitCode(2)]);
    expect(stockOf(trial.home, kitKind).lotOfCode.has(kitCode(1))).toBe(false);
  });

  it('codes kept together lose only the one that is taken out', () => {
    const { trial, delivery } = box();
    const codes = [kitCode(1), kitCode(2), kitCode(3)];
    trial.add('kits.unpacked', { delivery, kitKind, codes });
    trial.must(takeCodeOut(trial.home, { kitKind, delivery, code: kitCode(2) }));
    expect([...deliveriesOf(trial.home, kitKind)[0]!.codes.keys()]).toEqual([
      kitCode(1),
      kitCode(3),
    ]);
  });
});

describe('what is printed on the box', () => {
  it('is put right, and every kit of it with it', () => {
    const { trial, delivery, scan } = box();
    trial.must(scan(kitCode(1)));
    const right = { kitKind, delivery, lot: 'WS-7', expires: '2026-04-01' as Day, count: 19 };
    trial.must(amendDelivery(trial.home, right));
    expect(lots(trial)).toEqual([
      { kitKind, lot: 'WS-7', expires: '2026-04-01', left: 19, recalled: false },
    ]);
    expect(stockOf(trial.home, kitKind).lotOfCode.get(kitCode(1))?.lot).toBe('WS-7');
  });

  it('that disagrees with another box of the same lot is told', () => {
    const { trial } = box();
    const came = { kitKind, lot: 'WS-1', expires: '2026-10-31' as Day, count: 5, codes: [] };
    expect(trial.refused(receiveKits(trial.home, came, trial.doing))).toMatchObject({
      reason: 'lot-ends-otherwise',
      on: expires,
    });
  });

  it('where two tablets wrote two ends for one lot, the sooner counts', () => {
    const { trial } = box();
    for (const [delivery, ends] of [
      ['later1', '2026-12-31'],
      ['sooner', '2026-06-30'],
    ] as const) {
      const data = { kitKind, lot: 'WS-1', count: 5, on: '2026-03-03' as Day };
      trial.add('kits.delivered', { ...data, delivery: delivery as never, expires: ends as Day });
    }
    expect(lots(trial)[0]).toMatchObject({ expires: '2026-06-30', left: 30 });
  });

  it.each([0, -1, 1.5, Number.NaN, 20_000])('a count of %s is turned away', (count) => {
    const { trial } = box();
    const came = { kitKind, lot: 'WS-9', expires, count, codes: [] };
    expect(trial.refused(receiveKits(trial.home, came, trial.doing))).toMatchObject({
      reason: 'not-a-count',
    });
  });
});
