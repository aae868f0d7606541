import { each, firstRefusal, notEmpty, probability, sameLength } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

export interface FreedomSeriesQuestion {
  /** The chance that each round would find infection if it is there. */
  readonly detection: readonly number[];
  /** The chance that infection came in before each round: one for all, or one for each. */
  readonly introduction: number | readonly number[];
  /** The chance of freedom to start with. */
  readonly prior: number;
}

export interface FreedomSeries {
  readonly free: readonly number[];
  /** The prior of each round, after the risk of introduction. */
  readonly discountedPrior: readonly number[];
  /** Where the series would settle with the last round's figures repeated for ever. */
  readonly equilibriumFree: number;
  readonly equilibriumPrior: number;
}

/** P(free | nothing found). */
const update = (prior: number, detection: number): number => {
  const missed = 1 - detection * (1 - prior);
  return missed === 0 ? 0 : prior / missed;
};

/** The fixed point of discounting and updating; 0 when introduction outruns detection. */
function equilibrium(detection: number, introduction: number): readonly [number, number] {
  if (introduction === 0) return [1, 1];
  if (detection <= introduction) return [0, 0];
  const prior = 1 - introduction / detection;
  return [prior / (1 - introduction), prior];
}

/**
 * The chance that the home is free of infection after each of several clear rounds, with a risk of
 * introduction between them.
 * Source: Martin, Cameron & Greiner (2007), Preventive Veterinary Medicine 79:71-97.
 */
export function freedomSeries({
  detection,
  introduction,
  prior,
}: FreedomSeriesQuestion): Outcome<FreedomSeries> {
  const risks = typeof introduction === 'number' ? detection.map(() => introduction) : introduction;
  const refused = firstRefusal(
    notEmpty('detection', detection),
    each('detection', detection, probability),
    each('introduction', risks, probability),
    sameLength('detection and introduction', detection, risks),
    probability('prior', prior),
  );
  if (refused) return refused;
  const free: number[] = [];
  const discountedPrior: number[] = [];
  let belief = prior;
  detection.forEach((found, i) => {
    const discounted = belief * (1 - (risks[i] as number));
    belief = update(discounted, found);
    discountedPrior.push(discounted);
    free.push(belief);
  });
  const [equilibriumFree, equilibriumPrior] = equilibrium(
    detection[detection.length - 1] as number,
    risks[risks.length - 1] as number,
  );
  return given({ free, discountedPrior, equilibriumFree, equilibriumPrior });
}
