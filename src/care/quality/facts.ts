import * as v from 'valibot';
import { factId } from '../ids.ts';
import { kind, prose, replaces } from '../kind.ts';

/**
 * What a named person decided about a finding. `one-stands`: the account in `keeps` holds and every
 * other test in it is withdrawn; `none-stands`: all are withdrawn; `explained`: nothing was wrong.
 */
export const verdicts = ['one-stands', 'none-stands', 'explained'] as const;
export type Verdict = (typeof verdicts)[number];

export const qualityFacts = {
  /** Settles a finding, having seen exactly these members. Another member opens it again. */
  settled: kind({
    data: {
      finding: v.pipe(v.string(), v.maxLength(200)),
      members: v.array(factId),
      verdict: v.picklist(verdicts),
      /** The fact whose account stands, where the verdict picks one. */
      keeps: v.exactOptional(factId),
      replaces,
    },
    private: { reason: prose },
    files: (data) => [['finding', data.finding]],
  }),
};
