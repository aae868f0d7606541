import { firstRefusal, positive, properProbability } from '../refusal/checks.ts';
import { type Outcome, withinReach } from '../refusal/refusal.ts';
import { checkDemandLaw, type DemandFigures, type DemandLaw, demandFigures } from './demand-law.ts';

/** What one short, and one left over, costs; or only their ratio under / (under + over). */
export type NewsvendorCosts =
  | { readonly under: number; readonly over: number }
  | { readonly criticalRatio: number };

export interface Newsvendor {
  readonly criticalRatio: number;
  /** The least order with F(order) >= the critical ratio; not whole for a continuous law. */
  readonly order: number;
  /** Expected costs at the order and one below and above it; absent where only the ratio is known. */
  readonly cost?: number;
  readonly costBelow?: number;
  readonly costAbove?: number;
}

/** under E(D - q)+ + over E(q - D)+. */
const expectedCost = (figures: DemandFigures, under: number, over: number, q: number): number => {
  const short = figures.shortage(q);
  return under * short + over * (q - figures.mean + short);
};

/**
 * How many to hold for one period when being short and having left over both cost.
 * Source: Arrow, Harris & Marschak (1951); Silver, Pyke & Thomas (2017), chapter 10.
 */
export function newsvendor(demand: DemandLaw, costs: NewsvendorCosts): Outcome<Newsvendor> {
  const known = 'under' in costs;
  const refused = firstRefusal(
    checkDemandLaw(demand),
    ...(known
      ? [positive('under', costs.under), positive('over', costs.over)]
      : [properProbability('criticalRatio', costs.criticalRatio)]),
  );
  if (refused) return refused;
  const criticalRatio = known ? costs.under / (costs.under + costs.over) : costs.criticalRatio;
  const figures = demandFigures(demand);
  if (!known) return withinReach(() => ({ criticalRatio, order: figures.quantile(criticalRatio) }));
  const cost = (q: number): number => expectedCost(figures, costs.under, costs.over, q);
  return withinReach(() => {
    const order = figures.quantile(criticalRatio);
    return {
      criticalRatio,
      order,
      cost: cost(order),
      costBelow: cost(order - 1),
      costAbove: cost(order + 1),
    };
  });
}
