import type { Fact, FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { concluding, standing } from '../home.ts';
import type { Code } from '../kind.ts';
import type { Day } from '../time.ts';

/** One lot of one kind of kit, as far as the facts tell. */
export interface Lot {
  readonly kitKind: string;
  readonly lot: string;
  /** Usable through this day. */
  readonly expires: Day;
  /** Kits that should be on the shelf; never below 0. */
  readonly left: number;
  readonly recalled: boolean;
}

export interface Stock {
  readonly lots: readonly Lot[];
  /** The lot of each kit that was unpacked and scanned. */
  readonly lotOfCode: ReadonlyMap<Code, Lot>;
  /** Kits opened whose lot nobody knows: they came off some shelf all the same. */
  readonly openedOfUnknownLot: number;
}

/** Everything known about one kind of kit. Lots with the soonest expiry come first. */
export const stockOf: (home: Home, kitKind: string) => Stock = concluding('lot', concludeStock);

function concludeStock(facts: readonly Fact[], kitKind: string): Stock {
  const delivered = standing(facts, 'kits.delivered');
  const lotOf = new Map(delivered.map((fact) => [fact.data.delivery, fact.data.lot]));
  const lotOfCode = new Map<Code, string>();
  for (const { data } of standing(facts, 'kits.unpacked')) {
    const lot = lotOf.get(data.delivery);
    if (lot !== undefined) for (const code of data.codes) lotOfCode.set(code, lot);
  }
  const tally = countLots(facts, lotOfCode);
  const recalled = new Set(standing(facts, 'lot.recalled').map((fact) => fact.data.lot));
  const lots = [...soonestEnd(delivered)]
    .map(([lot, expires]) => ({
      kitKind,
      lot,
      expires,
      left: Math.max(0, tally.get(lot) ?? 0),
      recalled: recalled.has(lot),
    }))
    .sort((a, b) =>
      a.expires === b.expires ? (a.lot < b.lot ? -1 : 1) : a.expires < b.expires ? -1 : 1,
    );
  const byName = new Map(lots.map((lot) => [lot.lot, lot]));
  return {
    lots,
    lotOfCode: new Map(
      [...lotOfCode].flatMap(([code, lot]) => {
        const found = byName.get(lot);
        return found === undefined ? [] : [[code, found] as const];
      }),
    ),
    openedOfUnknownLot: -Math.min(0, tally.get('') ?? 0),
  };
}

/** One lot has one expiry. Where two deliveries disagree the sooner counts until one is put right. */
function soonestEnd(delivered: readonly FactOf<'kits.delivered'>[]): Map<string, Day> {
  const ends = new Map<string, Day>();
  for (const { data } of delivered) {
    const known = ends.get(data.lot);
    if (known === undefined || data.expires < known) ends.set(data.lot, data.expires);
  }
  return ends;
}

/** Deliveries add, openings and kits put aside take away, a count of the shelf starts afresh. */
function countLots(
  facts: readonly Fact[],
  lotOfCode: ReadonlyMap<Code, string>,
): Map<string, number> {
  const tally = new Map<string, number>();
  const add = (lot: string, change: number) => tally.set(lot, (tally.get(lot) ?? 0) + change);
  const counted = new Set(standing(facts, 'kits.counted').map((fact) => fact.id));
  const delivered = new Set(standing(facts, 'kits.delivered').map((fact) => fact.id));
  for (const fact of facts) {
    if (fact.kind === 'kits.delivered' && delivered.has(fact.id))
      add(fact.data.lot, fact.data.count);
    if (fact.kind === 'kits.counted' && counted.has(fact.id))
      tally.set(fact.data.lot, fact.data.count);
    if (fact.kind === 'kit.opened') add(fact.data.lot ?? lotOfCode.get(fact.data.code) ?? '', -1);
    if (fact.kind === 'kit.put-aside') {
      const { lot, code } = fact.data;
      add(lot ?? (code === undefined ? '' : (lotOfCode.get(code) ?? '')), -1);
    }
  }
  return tally;
}

export const usable = (lot: Lot, on: Day): boolean =>
  lot.left > 0 && !lot.recalled && lot.expires >= on;

/** Kits on the shelf that may be opened on a day. */
export const usableKits = (home: Home, kitKind: string, on: Day): number =>
  stockOf(home, kitKind)
    .lots.filter((lot) => usable(lot, on))
    .reduce((sum, lot) => sum + lot.left, 0);

export interface Reserved {
  readonly lot: Lot;
  readonly count: number;
}

/** Kits for so many people, soonest expiry first. `missing` is how many more are needed. */
export function reserve(
  home: Home,
  kitKind: string,
  { on, count }: { on: Day; count: number },
): { readonly reserved: readonly Reserved[]; readonly missing: number } {
  let wanted = count;
  const reserved: Reserved[] = [];
  for (const lot of stockOf(home, kitKind).lots) {
    if (wanted === 0) break;
    if (!usable(lot, on)) continue;
    const take = Math.min(lot.left, wanted);
    reserved.push({ lot, count: take });
    wanted -= take;
  }
  return { reserved, missing: wanted };
}
