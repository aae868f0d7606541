import type { Fact, FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { concluding, standing } from '../home.ts';
import type { DeliveryId, FactId } from '../ids.ts';
import type { Code } from '../kind.ts';

/** One box of kits that came in, and what was found in it as the kits were scanned. */
export interface Delivery {
  readonly id: DeliveryId;
  /** The fact that stands; an amendment of the delivery names it. */
  readonly delivered: FactOf<'kits.delivered'>;
  /** Each code with the entry that holds it, in the order scanned. */
  readonly codes: ReadonlyMap<Code, FactId>;
}

/** Deliveries of one kind of kit, newest first. */
export const deliveriesOf: (home: Home, kitKind: string) => readonly Delivery[] = concluding(
  'lot',
  (facts: readonly Fact[]) => {
    const unpacked = standing(facts, 'kits.unpacked');
    return standing(facts, 'kits.delivered')
      .map((delivered) => ({
        id: delivered.data.delivery,
        delivered,
        codes: new Map(
          unpacked
            .filter((fact) => fact.data.delivery === delivered.data.delivery)
            .flatMap((fact) => fact.data.codes.map((code) => [code, fact.id] as const)),
        ),
      }))
      .reverse();
  },
);

export const deliveryOf = (home: Home, kitKind: string, id: DeliveryId): Delivery | undefined =>
  deliveriesOf(home, kitKind).find((delivery) => delivery.id === id);
