import type { Place } from '../../../care/rounds/first-order.ts';
import type { AllWords } from '../../words/en-all.ts';

/** Why somebody stands where they do, in the order in which it decides. */
export const whyHere = (
  { cohort, unit, room, leadMinutes }: Place,
  { prepare }: AllWords,
): string =>
  [
    prepare.cohorts[cohort],
    unit,
    room === '' ? '' : prepare.room(room),
    leadMinutes === 0 ? '' : prepare.ahead(leadMinutes),
  ]
    .filter((part) => part !== '')
    .join(', ');
