import type { DataOf } from '../care/catalogue.ts';
import { codeUse } from '../care/custody/code.ts';
import type { Home } from '../care/home.ts';
import { factsIn, standing } from '../care/home.ts';
import type { DeliveryId } from '../care/ids.ts';
import type { Code } from '../care/kind.ts';
import { kitKindOf, policyOn } from '../care/policy/in-force.ts';
import type { Refusal } from '../care/refusal.ts';
import { allow, refuse } from '../care/refusal.ts';
import { ranks } from '../care/staff/rights.ts';
import type { PpeItem } from '../care/supplies/facts.ts';
import type { Day } from '../care/time.ts';
import { standingFor } from './describe.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';
import { malformed, usedBefore } from './take-swab/kit.ts';
import { wrongBox } from './unpack-kits.ts';
import { wrongText } from './wrong-entry.ts';

/** Kits came in: which kind, lot, expiry, how many, and the codes of those unpacked and scanned. */
export function receiveKits(
  home: Home,
  came: {
    readonly kitKind: string;
    readonly lot: string;
    readonly expires: Day;
    readonly count: number;
    readonly codes: readonly string[];
  },
  doing: Doing,
): Outcome {
  const on = today(home, doing);
  const lot = came.lot.trim().normalize('NFC');
  if (kitKindOf(policyOn(home, on).policy, came.kitKind) === undefined) {
    return refuse({ reason: 'kit-other-kind', kitKind: came.kitKind });
  }
  const wrong = wrongBox(home, { ...came, lot });
  if (wrong !== undefined) return refuse(wrong);
  if (came.expires < on) return refuse({ reason: 'kit-expired', on: came.expires });
  for (const code of came.codes) {
    const wrong = malformed(home, { kitKind: came.kitKind, code, on });
    if (wrong !== undefined) return refuse(wrong);
    if (codeUse(home, code as Code).use !== 'free')
      return refuse({ reason: 'code-put-aside', code });
  }
  const delivery = doing.draw() as DeliveryId;
  const { kitKind, expires, count } = came;
  const codes = [...new Set(came.codes)] as Code[];
  return allow([
    { kind: 'kits.delivered', data: { delivery, kitKind, lot, expires, count, on } },
    ...batches(codes).map((batch) => ({
      kind: 'kits.unpacked' as const,
      data: { delivery, kitKind, codes: batch },
    })),
  ]);
}

const BATCH = 200;
const batches = (codes: Code[]): Code[][] =>
  Array.from({ length: Math.ceil(codes.length / BATCH) }, (_, i) =>
    codes.slice(i * BATCH, (i + 1) * BATCH),
  );

/** The shelf was counted: from here the count is what was seen. */
export const countKits = (
  home: Home,
  seen: { readonly kitKind: string; readonly lot: string; readonly count: number },
  doing: Doing,
): Outcome =>
  isCount(seen.count)
    ? allow([{ kind: 'kits.counted', data: { ...seen, on: today(home, doing) } }])
    : refuse({ reason: 'not-a-count', field: 'count' });

const isCount = (count: number): boolean =>
  Number.isInteger(count) && count >= 0 && count <= 1_000_000;

export function recallLot(
  home: Home,
  recall: { readonly kitKind: string; readonly lot: string; readonly reason: string },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'senior')) return refuse({ reason: 'needs-senior' });
  if (recall.reason.trim() === '') return refuse({ reason: 'reason-missing' });
  const wrong = wrongText(recall.reason, { field: 'reason', most: 500 });
  if (wrong !== undefined) return refuse(wrong);
  const { reason, ...data } = recall;
  return allow([{ kind: 'lot.recalled', data, private: { reason: reason.trim() } }]);
}

/** Whoever scans it means this kit; without a code it is one of its lot, or of nobody knows which. */
export function putKitAside(
  home: Home,
  aside: {
    readonly kitKind: string;
    readonly lot?: string;
    readonly code?: string;
    readonly why: DataOf<'kit.put-aside'>['why'];
  },
  doing: Doing,
): Outcome {
  const { code: raw, ...data } = aside;
  if (raw === undefined) return allow([{ kind: 'kit.put-aside', data }]);
  const code = raw.trim() as Code;
  const wrong = unfitCode(home, { kitKind: aside.kitKind, code, on: today(home, doing) });
  if (wrong !== undefined) return refuse(wrong);
  return allow([{ kind: 'kit.put-aside', data: { ...data, code } }]);
}

/** Why a code cannot be put aside: it is no code of this kind of kit, or it is closed already. */
export const unfitCode = (
  home: Home,
  { kitKind, code, on }: { readonly kitKind: string; readonly code: string; readonly on: Day },
): Refusal | undefined =>
  malformed(home, { kitKind, code, on }) ?? usedBefore(home, code.trim() as Code);

export const countPpe = (
  home: Home,
  seen: { readonly item: PpeItem; readonly count: number },
  doing: Doing,
): Outcome =>
  isCount(seen.count)
    ? allow([
        {
          kind: 'ppe.counted',
          data: {
            ...seen,
            on: today(home, doing),
            ...standingFor(home, ['ppe', 'counted'], {
              kind: 'ppe.counted',
              where: (fact) => fact.data.item === seen.item,
            }),
          },
        },
      ])
    : refuse({ reason: 'not-a-count', field: seen.item });

/** A manager says which version of which policy the service works by, from which day. */
export function confirmPolicy(
  home: Home,
  confirmed: {
    readonly policy: string;
    readonly version: number;
    readonly digest: string;
    readonly from: Day;
  },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'manager')) return refuse({ reason: 'needs-manager' });
  const same = standing(factsIn(home, 'policy', 'confirmed'), 'policy.confirmed').filter(
    ({ data }) => data.from === confirmed.from,
  );
  const replaces = same.map(({ id }) => id);
  return allow([
    {
      kind: 'policy.confirmed',
      data: { ...confirmed, ...(replaces.length > 0 && { replaces }) },
    },
  ]);
}
