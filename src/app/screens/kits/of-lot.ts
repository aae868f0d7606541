import type { Fact } from '../../../care/catalogue.ts';
import type { Code } from '../../../care/kind.ts';
import type { Delivery } from '../../../care/supplies/deliveries.ts';
import type { Lot } from '../../../care/supplies/stock.ts';

interface Known {
  readonly deliveries: readonly Delivery[];
  readonly lotOfCode: ReadonlyMap<Code, Lot>;
}

/** Which entries about a kind of kit are about one lot of it. */
export function ofLot(lot: string, { deliveries, lotOfCode }: Known): (fact: Fact) => boolean {
  const boxes = new Set(
    deliveries.filter(({ delivered }) => delivered.data.lot === lot).map(({ id }) => id),
  );
  const codeIn = (code: Code | undefined) => code !== undefined && lotOfCode.get(code)?.lot === lot;
  return (fact) => {
    switch (fact.kind) {
      case 'kits.delivered':
      case 'kits.unpacked':
        return boxes.has(fact.data.delivery);
      case 'kits.counted':
      case 'lot.recalled':
        return fact.data.lot === lot;
      case 'kit.put-aside':
      case 'kit.opened':
        return fact.data.lot === lot || codeIn(fact.data.code);
      default:
        return false;
    }
  };
}
