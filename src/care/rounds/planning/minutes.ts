/** Minutes after midnight as a wall time; past midnight it goes on counting, so that 24:10 can be said. */
export const clock = (minutes: number): string => {
  const whole = Math.round(minutes);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${two(Math.floor(whole / 60))}:${two(whole % 60)}`;
};

/** What a plan reckons with for a visit: its mean, rounded up to whole minutes. */
export const plannedMinutes = ({
  minutes,
}: {
  readonly minutes: { readonly mean: number };
}): number => Math.max(1, Math.ceil(minutes.mean - 1e-9));
