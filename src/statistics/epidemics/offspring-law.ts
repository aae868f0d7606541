import { binomialPmf } from '../distributions/binomial.ts';
import type { InfectiousPeriod } from './infectious-period.ts';

/**
 * How many of s susceptibles one infective infects, each at this rate while it is infectious.
 * Fixed: binomial. Erlang: stage by stage, in each a race between the next infection and its end.
 */
export function offspringLaw(s: number, rate: number, period: InfectiousPeriod): Float64Array {
  if (period.law === 'fixed') {
    const p = -Math.expm1(-rate * period.mean);
    return Float64Array.from({ length: s + 1 }, (_, k) => binomialPmf(k, s, p));
  }
  const stages = period.law === 'erlang' ? period.shape : 1;
  const endRate = stages / period.mean;
  const law = new Float64Array(s + 1);
  law[0] = 1;
  for (let stage = 0; stage < stages; stage++) passStage(law, rate, endRate);
  return law;
}

/** In place: the number infected before a stage becomes the number infected after it. */
function passStage(law: Float64Array, rate: number, endRate: number): void {
  const s = law.length - 1;
  let arriving = 0;
  for (let k = 0; k <= s; k++) {
    const here = (law[k] as number) + arriving;
    const ends = endRate / (endRate + rate * (s - k));
    law[k] = here * ends;
    arriving = here * (1 - ends);
  }
}
