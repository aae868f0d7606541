import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { checkDemand, splitDemand } from './demand-history.ts';

export interface DemandClass {
  /** Average periods between demands. */
  readonly averageInterval: number;
  /** Squared coefficient of variation of the sizes (sample standard deviation); 0 for one demand. */
  readonly squaredVariation: number;
  readonly kind: 'smooth' | 'intermittent' | 'erratic' | 'lumpy';
}

/**
 * What kind of demand it is, which says what forecast fits. No demand yet: refused.
 * Source: Syntetos, Boylan & Croston (2005), Journal of the Operational Research Society
 * 56:495-503: cut at an interval of 1.32 and a squared variation of 0.49.
 */
export function demandClass(demand: readonly number[]): Outcome<DemandClass> {
  const refused = checkDemand(demand);
  if (refused) return refused;
  const { sizes } = splitDemand(demand);
  if (sizes.length === 0) return refuse('undefined', 'There was no demand yet, so it has no kind.');
  const mean = sizes.reduce((sum, y) => sum + y, 0) / sizes.length;
  const squares = sizes.reduce((sum, y) => sum + (y - mean) ** 2, 0);
  const squaredVariation = sizes.length > 1 ? squares / (sizes.length - 1) / mean ** 2 : 0;
  const averageInterval = demand.length / sizes.length;
  const often = averageInterval < 1.32;
  const steady = squaredVariation < 0.49;
  const kind = often ? (steady ? 'smooth' : 'erratic') : steady ? 'intermittent' : 'lumpy';
  return given({ averageInterval, squaredVariation, kind });
}
