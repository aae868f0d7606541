/** Seeds that once broke an invariant. They are run first, for ever. */
export const keptSeeds: readonly number[] = [2750];
