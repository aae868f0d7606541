import * as v from 'valibot';
import { kind, replaces, word } from '../kind.ts';
import { day } from '../time.ts';

export const policyFacts = {
  /**
   * A named person says: from this day we work by this version of this policy. `digest` is the
   * base64url SHA-256 of the policy file's canonical text, so a file that was changed is found out.
   */
  'policy.confirmed': kind({
    data: {
      policy: word,
      version: v.pipe(v.number(), v.integer(), v.minValue(1)),
      digest: v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{43}$/)),
      from: day,
      replaces,
    },
    files: () => [['policy', 'confirmed']],
  }),
};
