import * as v from 'valibot';
import { factId, personId } from '../ids.ts';
import { kind, prose, replaces, word } from '../kind.ts';
import { day } from '../time.ts';

/**
 * On whose word a person may be swabbed. `asks-each-time`: decides for themselves and is asked at
 * every try. `supported`: the same, with people who help them decide. `interpretation`: others read
 * their will and preferences as well as they can. `refuses`: a standing no. `nobody`: nobody has
 * shown that they may decide, so nobody swabs. None of them replaces being willing at the bedside,
 * and none stands for a person being held.
 */
export const authorities = [
  'asks-each-time',
  'supported',
  'interpretation',
  'best-interests',
  'attorney',
  'deputy',
  'refuses',
  'nobody',
] as const;
export type Authority = (typeof authorities)[number];

/** Where a decision record begins: capacity is presumed until there is a reason to doubt it. */
export const starts = ['presumed', 'in-doubt', 'support-wanted', 'will-unclear'] as const;
export type Start = (typeof starts)[number];

export const conclusions = [
  'has-capacity',
  'lacks-capacity',
  'will-known',
  'will-interpreted',
  'not-known',
] as const;
export type Conclusion = (typeof conclusions)[number];

/** The four things a person needs to be able to do to make a decision (Mental Capacity Act 2005 s.3(1)). */
export const limbs = ['understand', 'retain', 'weigh', 'communicate'] as const;
export type Limb = (typeof limbs)[number];

/** What a person is told before they decide (s.3(4): the foreseeable consequences either way). */
export const told = ['what', 'why', 'how-it-feels', 'if-positive', 'if-not-tested'] as const;
export type Told = (typeof told)[number];

/** The parts of a record that are written in words. A rule pack says which are asked on which path. */
export const parts = [
  'matter',
  'information',
  'aids',
  'doubt',
  ...limbs,
  'cause',
  'supporters',
  'will',
  'pressure',
  'regain',
  'wishes',
  'consulted',
  'document',
  'options',
  'conditions',
  'stop-rules',
] as const;
export type Part = (typeof parts)[number];

/** What is closed in a decision record; its words are private and may be erased. */
const record = v.strictObject({
  pack: word,
  packVersion: v.pipe(v.number(), v.integer(), v.minValue(1)),
  start: v.picklist(starts),
  conclusion: v.exactOptional(v.picklist(conclusions)),
  told: v.array(v.picklist(told)),
  limbs: v.array(v.strictObject({ limb: v.picklist(limbs), can: v.boolean() })),
  /** The attorney's, the deputy's or the advance decision's paper: seen, or only heard of. */
  document: v.exactOptional(v.picklist(['seen', 'not-seen'])),
  /** The day by which it is looked at again; it ends later, with `until`. */
  review: day,
  parts: v.array(v.picklist(parts)),
});

export const consentFacts = {
  'consent.decided': kind({
    data: {
      person: personId,
      test: word,
      authority: v.picklist(authorities),
      from: day,
      until: day,
      record: v.exactOptional(record),
      replaces,
    },
    private: {
      reason: prose,
      parts: v.exactOptional(
        v.array(
          v.strictObject({ part: v.picklist(parts), text: v.pipe(v.string(), v.maxLength(4000)) }),
        ),
      ),
    },
    files: (data) => [['person', data.person]],
  }),
  /** Somebody opened the whole record of a decision. Reading it is itself on record. */
  'decision.looked-at': kind({
    data: { person: personId, decision: factId },
    files: (data) => [['person', data.person]],
  }),
};
