import * as v from 'valibot';
import { deliveryId } from '../ids.ts';
import { code, count, kind, line, replaces, word } from '../kind.ts';
import { day } from '../time.ts';

export const ppeItems = ['gloves', 'aprons', 'masks', 'eye-protection'] as const;
export type PpeItem = (typeof ppeItems)[number];

export const suppliesFacts = {
  /** A box of kits came in. `expires` is inclusive: usable through that day. */
  'kits.delivered': kind({
    data: {
      delivery: deliveryId,
      kitKind: word,
      lot: word,
      expires: day,
      count,
      on: day,
      replaces,
    },
    files: (data) => [['lot', data.kitKind]],
  }),
  /** Kits unpacked and scanned one by one, so that a code scanned later tells its lot and expiry. */
  'kits.unpacked': kind({
    data: {
      delivery: deliveryId,
      kitKind: word,
      codes: v.pipe(v.array(code), v.maxLength(200)),
      replaces,
    },
    files: (data) => [['lot', data.kitKind], ...data.codes.map((each) => ['code', each] as const)],
  }),
  'kits.counted': kind({
    data: { kitKind: word, lot: word, count, on: day, replaces },
    files: (data) => [['lot', data.kitKind]],
  }),
  'lot.recalled': kind({
    data: { kitKind: word, lot: word, replaces },
    private: { reason: line },
    files: (data) => [['lot', data.kitKind]],
  }),
  /** One kit found unfit before anybody opened it for a person. */
  'kit.put-aside': kind({
    data: {
      kitKind: word,
      lot: v.exactOptional(word),
      code: v.exactOptional(code),
      why: v.picklist(['damaged', 'expired', 'recalled', 'incomplete', 'labels-differ', 'other']),
      replaces,
    },
    files: (data) => [
      ['lot', data.kitKind],
      ...(data.code === undefined ? [] : [['code', data.code] as const]),
    ],
  }),
  'ppe.counted': kind({
    data: { item: v.picklist(ppeItems), count, on: day, replaces },
    files: () => [['ppe', 'counted']],
  }),
};
