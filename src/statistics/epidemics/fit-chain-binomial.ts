import { binomialPmf } from '../distributions/binomial.ts';
import { findRoot } from '../numeric/find-root.ts';
import { count } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';

export interface ObservedChain {
  /** Cases in each generation, the introductions first: 1-2 is [1, 2]. */
  readonly generations: readonly number[];
  readonly households: number;
}

export interface ChainFit {
  /** The chance that one infective infects one susceptible. */
  readonly p: number;
  readonly standardError: number;
  /** Households expected of each chain. */
  readonly expected: readonly number[];
}

/** One generation: `infected` of `susceptible` were infected by `infectives` (1 under Greenwood). */
interface Step {
  readonly infectives: number;
  readonly susceptible: number;
  readonly infected: number;
}

/** The steps of a chain, the last generation that infected nobody included. */
function stepsOf(
  generations: readonly number[],
  size: number,
  greenwood: boolean,
): readonly Step[] {
  let susceptible = size - (generations[0] ?? 0);
  return generations.flatMap((cases, g): Step[] => {
    if (susceptible === 0 || cases === 0) return [];
    const infected = generations[g + 1] ?? 0;
    const step = { infectives: greenwood ? 1 : cases, susceptible, infected };
    susceptible -= infected;
    return [step];
  });
}

/** Slope of the log-likelihood in q = 1 - p, and its negative second derivative. */
function slopes(
  steps: readonly (Step & { readonly weight: number })[],
  q: number,
): readonly [number, number] {
  let [score, information] = [0, 0];
  for (const { infectives: i, susceptible, infected, weight } of steps) {
    const qi = q ** i;
    const escaped = susceptible - infected;
    score += weight * ((escaped * i) / q - (infected * i * qi) / (q * (1 - qi)));
    information +=
      (weight * (escaped * i + (infected * i * qi * (i - 1 + qi)) / (1 - qi) ** 2)) / (q * q);
  }
  return [score, information];
}

function check(chains: readonly ObservedChain[]) {
  if (chains.length === 0)
    return refuse('empty', 'Give at least one chain with its number of households.');
  for (const { generations, households } of chains) {
    const refused = count('households', households);
    if (refused) return refused;
    if (generations.length === 0 || generations.some((g) => !Number.isSafeInteger(g) || g < 1)) {
      return refuse(
        'not-a-count',
        'A chain has a whole number of cases, 1 or more, in each generation.',
      );
    }
  }
  return undefined;
}

/**
 * The Reed-Frost (or Greenwood) chance of infection fitted by maximum likelihood to observed chains,
 * with the households expected of each. The household's size is the longest chain's unless given.
 * Nobody, or everybody, infected leaves the chance at an end: refused.
 * Source: Bailey (1975), chapter 14.
 */
export function fitChainBinomial(
  chains: readonly ObservedChain[],
  { size, greenwood = false }: { readonly size?: number; readonly greenwood?: boolean } = {},
): Outcome<ChainFit> {
  const refused = check(chains);
  if (refused) return refused;
  const people = size ?? Math.max(...chains.map((c) => c.generations.reduce((a, b) => a + b, 0)));
  const steps = chains.map((c) => stepsOf(c.generations, people, greenwood));
  const weighted = chains.flatMap((c, i) =>
    (steps[i] as readonly Step[]).map((s) => ({ ...s, weight: c.households })),
  );
  const score = (q: number): number => slopes(weighted, q)[0];
  const [low, high] = [1e-12, 1 - 1e-12];
  if (!(score(low) > 0 && score(high) < 0)) {
    return refuse(
      'undefined',
      'These chains put the chance of infection at 0 or 1, so it has no standard error.',
    );
  }
  const q = findRoot(score, low, high);
  const total = chains.reduce((sum, c) => sum + c.households, 0);
  const chance = (chain: readonly Step[]): number =>
    chain.reduce(
      (product, s) => product * binomialPmf(s.infected, s.susceptible, 1 - q ** s.infectives),
      1,
    );
  return given({
    p: 1 - q,
    standardError: 1 / Math.sqrt(slopes(weighted, q)[1]),
    expected: steps.map((chain) => total * chance(chain)),
  });
}
