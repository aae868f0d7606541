/** A length of visit, in minutes. */
export interface Minutes {
  readonly mean: number;
  readonly sd: number;
}

/** How many visits of one's own weigh as much as the home's: our own choice, no source. */
const WORTH = 4;

/** Where nobody has been timed yet: our own guess for a whole visit, gloves to gloves. */
export const UNTIMED: Minutes = { mean: 10, sd: 4 };

function momentsOf(logs: readonly number[]): { readonly mean: number; readonly variance: number } {
  const mean = logs.reduce((a, b) => a + b, 0) / logs.length;
  const variance = logs.reduce((a, x) => a + (x - mean) ** 2, 0) / Math.max(1, logs.length - 1);
  return { mean, variance };
}

/** The mean and standard deviation of a log-normal with these moments of its logarithm. */
function minutesOf(mean: number, variance: number): Minutes {
  const middle = Math.exp(mean + variance / 2);
  return { mean: middle, sd: middle * Math.sqrt(Math.exp(variance) - 1) };
}

/**
 * How long a visit to one person takes, from their own timed visits, drawn towards the home's where
 * they are few: on the logarithms, (n own + 4 home) / (n + 4), mean and variance alike. Times of 0 or
 * less are no times and do not count. Source of the form: the normal mean with a normal prior worth
 * four observations (Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.5; from memory).
 * @example learntMinutes([8, 8, 8, 8], { mean: 16, sd: 0 }).mean // about 11.3: the geometric middle
 */
export function learntMinutes(own: readonly number[], home: Minutes): Minutes {
  const variance = Math.log(1 + (home.sd / home.mean) ** 2);
  const mean = Math.log(home.mean) - variance / 2;
  const logs = own.filter((t) => t > 0).map(Math.log);
  if (logs.length === 0) return home;
  const mine = momentsOf(logs);
  const share = logs.length / (logs.length + WORTH);
  const middle = share * mine.mean + (1 - share) * mean;
  const spread = logs.length > 1 ? share * mine.variance + (1 - share) * variance : variance;
  return minutesOf(middle, spread);
}

/** The home's own length of visit, from all that were timed; a guess where fewer than five were. */
export function homeMinutes(all: readonly number[]): Minutes {
  const logs = all.filter((t) => t > 0).map(Math.log);
  if (logs.length < 5) return UNTIMED;
  const { mean, variance } = momentsOf(logs);
  return minutesOf(mean, variance);
}
