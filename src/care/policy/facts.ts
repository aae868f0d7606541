import * as v from 'valibot';
import { kind, replaces, word } from '../kind.ts';
import { day } from '../time.ts';

/** Longest policy file, as canonical text: with its envelope it must fit a fact's body. */
export const POLICY_TEXT_MOST = 15_000;

export const policyFacts = {
  /**
   * The service's own policy file, as canonical text, so that every tablet has it and any past day can
   * be shown with the rules of that day. It holds no personal data, so it stands in the body.
   */
  'policy.written': kind({
    data: {
      policy: word,
      version: v.pipe(v.number(), v.integer(), v.minValue(1)),
      digest: v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{43}$/)),
      text: v.pipe(v.string(), v.minLength(2), v.maxLength(POLICY_TEXT_MOST)),
    },
    files: () => [['policy', 'written']],
  }),
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
