/**
 * Tests to a signal of a Bernoulli CUSUM on multiples of 1/m, from every state: S rises by m - 1
 * steps on a void, falls by one step otherwise, stays at 0, and signals from `states` steps on.
 *
 * The states are solved in blocks of m - 1 from the top. Within a block each state's answer is
 * alpha + beta x (the state below the block) + gamma x (the block's last state), and sigma is the
 * chance of a signal first; beta + gamma + sigma = 1. Only positive terms are added, so that a chart
 * which almost never signals loses no figures. Work: proportional to the states.
 */
export function testsToSignal(states: number, m: number, p: number): Float64Array {
  const rise = m - 1;
  const alpha = new Float64Array(states);
  const beta = new Float64Array(states);
  const sigma = new Float64Array(states);
  let end = states;
  while (end > 0) {
    const from = Math.max(0, end - rise);
    solveBlock({ alpha, beta, sigma, rise, p }, from, end);
    end = from;
  }
  return substitute({ alpha, beta, rise }, states);
}

interface Chain {
  readonly alpha: Float64Array;
  readonly beta: Float64Array;
  readonly sigma: Float64Array;
  readonly rise: number;
  readonly p: number;
}

function solveBlock({ alpha, beta, sigma, rise, p }: Chain, from: number, end: number): void {
  const stay = 1 - p;
  const gamma = new Float64Array(end - from);
  let [a, b, g, s] = [0, 1, 0, 0];
  for (let k = from; k < end; k++) {
    const up = k + rise;
    const signals = up >= alpha.length;
    const upAlpha = signals ? 0 : (alpha[up] as number);
    const upBeta = signals ? 0 : (beta[up] as number);
    const upSigma = signals ? 1 : (sigma[up] as number);
    if (k === 0) {
      // At the bottom a good test changes nothing: wait for the void.
      [a, b, g, s] = [1 / p + upAlpha, 0, upBeta, upSigma];
    } else {
      [a, b, g, s] = [
        1 + stay * a + p * upAlpha,
        stay * b,
        stay * g + p * upBeta,
        stay * s + p * upSigma,
      ];
    }
    alpha[k] = a;
    beta[k] = b;
    gamma[k - from] = g;
    sigma[k] = s;
  }
  // The last state is known from the one below the block: (a + b x) / (b + s).
  const away = b + s;
  for (let k = from; k < end; k++) {
    const share = (gamma[k - from] as number) / away;
    alpha[k] = (alpha[k] as number) + share * a;
    beta[k] = (beta[k] as number) + share * b;
    sigma[k] = (sigma[k] as number) + share * s;
  }
}

/** From the bottom block, whose answers stand alone, upwards. */
function substitute(
  { alpha, beta, rise }: Pick<Chain, 'alpha' | 'beta' | 'rise'>,
  states: number,
): Float64Array {
  const answers = new Float64Array(states);
  const firstBlock = states % rise === 0 ? Math.min(rise, states) : states % rise;
  for (let k = 0; k < states; k++) {
    const below = k < firstBlock ? -1 : firstBlock + Math.floor((k - firstBlock) / rise) * rise - 1;
    answers[k] =
      (alpha[k] as number) + (below < 0 ? 0 : (beta[k] as number) * (answers[below] as number));
  }
  return answers;
}
