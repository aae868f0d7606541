import type { Home } from '../care/home.ts';
import type { DeliveryId } from '../care/ids.ts';
import type { Code } from '../care/kind.ts';
import type { Refusal } from '../care/refusal.ts';
import { allow, refuse } from '../care/refusal.ts';
import { deliveriesOf, deliveryOf } from '../care/supplies/deliveries.ts';
import { stockOf } from '../care/supplies/stock.ts';
import type { Day } from '../care/time.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';
import { malformed, usedBefore } from './take-swab/kit.ts';
import { wrongDay } from './wrong-entry.ts';

interface OfDelivery {
  readonly kitKind: string;
  readonly delivery: DeliveryId;
}

/** One kit of a delivery is scanned as it comes out of the box: from now on its code tells its lot. */
export function unpackKit(
  home: Home,
  { kitKind, delivery, code: raw }: OfDelivery & { readonly code: string },
  doing: Doing,
): Outcome {
  if (deliveryOf(home, kitKind, delivery) === undefined)
    return refuse({ reason: 'delivery-unknown' });
  const code = raw.trim() as Code;
  const wrong =
    malformed(home, { kitKind, code, on: today(home, doing) }) ??
    inStock(home, kitKind, code) ??
    usedBefore(home, code);
  if (wrong !== undefined) return refuse(wrong);
  return allow([{ kind: 'kits.unpacked', data: { delivery, kitKind, codes: [code] } }]);
}

function inStock(home: Home, kitKind: string, code: Code): Refusal | undefined {
  const lot = stockOf(home, kitKind).lotOfCode.get(code)?.lot;
  return lot === undefined ? undefined : { reason: 'code-in-stock', code, lot };
}

/** A kit scanned by mistake is taken out of a delivery again. */
export function takeCodeOut(
  home: Home,
  { kitKind, delivery, code }: OfDelivery & { readonly code: Code },
): Outcome {
  const entry = deliveryOf(home, kitKind, delivery);
  const id = entry?.codes.get(code);
  if (entry === undefined || id === undefined) return refuse({ reason: 'code-unknown', code });
  const codes = [...entry.codes].filter(([each, at]) => at === id && each !== code);
  return allow([
    {
      kind: 'kits.unpacked',
      data: { delivery, kitKind, codes: codes.map(([each]) => each), replaces: [id] },
    },
  ]);
}

/** What is printed on the box was read or typed wrong: lot, expiry or how many. */
export function amendDelivery(
  home: Home,
  given: OfDelivery & { readonly lot: string; readonly expires: Day; readonly count: number },
): Outcome {
  const { kitKind, delivery, expires, count } = given;
  const found = deliveryOf(home, kitKind, delivery)?.delivered;
  if (found === undefined) return refuse({ reason: 'delivery-unknown' });
  const lot = given.lot.trim().normalize('NFC');
  const wrong = wrongBox(home, { ...given, lot });
  if (wrong !== undefined) return refuse(wrong);
  const { data } = found;
  if (data.lot === lot && data.expires === expires && data.count === count)
    return refuse({ reason: 'nothing-changed' });
  return allow([
    {
      kind: 'kits.delivered',
      data: { delivery, kitKind, lot, expires, count, on: data.on, replaces: [found.id] },
    },
  ]);
}

/** What a box says about itself, checked against the other boxes of its lot. */
export function wrongBox(
  home: Home,
  box: {
    readonly kitKind: string;
    readonly lot: string;
    readonly expires: Day;
    readonly count: number;
    readonly delivery?: DeliveryId;
  },
): Refusal | undefined {
  if (box.lot === '') return { reason: 'empty', field: 'lot' };
  if (box.lot.length > 60) return { reason: 'too-long', field: 'lot', most: 60 };
  if (!Number.isInteger(box.count) || box.count < 1 || box.count > 10_000)
    return { reason: 'not-a-count', field: 'count' };
  const wrong = wrongDay(box.expires, { field: 'expires' });
  if (wrong !== undefined) return wrong;
  const other = deliveriesOf(home, box.kitKind).find(
    ({ id, delivered: { data } }) =>
      id !== box.delivery && data.lot === box.lot && data.expires !== box.expires,
  );
  return other === undefined
    ? undefined
    : { reason: 'lot-ends-otherwise', lot: box.lot, on: other.delivered.data.expires };
}
