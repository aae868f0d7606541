import type { Part } from '../../../care/consent/facts.ts';
import { limbs, parts } from '../../../care/consent/facts.ts';
import type { DecisionAnswers } from '../../../care/consent/path.ts';
import type { Day } from '../../../care/time.ts';

/** What has been typed of a decision so far, and which question is on the screen. */
export interface DecisionDraft extends DecisionAnswers {
  readonly step: number;
  readonly test: string;
  readonly from: string;
  readonly review: string;
  readonly until: string;
}

/** Nothing is answered beforehand; only the day it starts is today. */
export const emptyDecision = (test: string, today: Day): DecisionDraft => ({
  ...{ step: 0, test, start: '', conclusion: '', authority: '', told: [], document: '' },
  limbs: Object.fromEntries(limbs.map((limb) => [limb, ''])) as DecisionDraft['limbs'],
  texts: Object.fromEntries(parts.map((part) => [part, ''])) as Record<Part, string>,
  ...{ from: today, review: '', until: '' },
});
