import type { Home } from '../home.ts';
import type { FactId, TestId } from '../ids.ts';
import { rulingOn } from '../quality/held.ts';
import { countedBy } from './counted.ts';
import type { Recorded } from './recorded.ts';
import { isAnothers, resultsFor } from './recorded.ts';

/** The results that count for a test, as far as everything is settled. */
export const countingFor = (home: Home, test: TestId): readonly Recorded[] =>
  countedBy(home, test, rulingOn(home, test));

/** What stands on a test's own record, so that a new result repeats it, contradicts it or corrects it. */
export const before = (home: Home, test: TestId): readonly Recorded[] =>
  countingFor(home, test).filter((fact) => !isAnothers(home, test, fact));

/** What a correction takes the place of: that, and what was ruled out, so that it is not asked again. */
export const replacedByCorrection = (home: Home, test: TestId): FactId[] => [
  ...new Set([...before(home, test), ...resultsFor(home, test)].map(({ id }) => id)),
];
