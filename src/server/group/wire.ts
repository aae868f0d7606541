import { timingSafeEqual } from 'node:crypto';
import * as v from 'valibot';
import { keyed } from './secret.ts';

/** Codes in one question. With the calls a minute it bounds how fast a member can try codes out. */
export const MOST_HASHES = 200;
/** How old a question may be: homes' clocks are seldom further apart, and a copy is soon worthless. */
export const FRESH_MS = 10 * 60_000;
export const PATH = '/group/used';
export const PROOF_HEADER = 'x-tallyround-group';

const hash = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{43}$/));
const service = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{1,64}$/));

/** "Is any of these used in your home?" Hashes of codes; nothing of anybody. */
export const questionSchema = v.strictObject({
  /** Of whoever asks. */
  service,
  /** ms since 1970. */
  at: v.pipe(v.number(), v.integer()),
  /** The codes stand on tests there already; else a kit is about to be opened. */
  onTests: v.boolean(),
  hashes: v.pipe(v.array(hash), v.minLength(1), v.maxLength(MOST_HASHES)),
});
export type Question = v.InferOutput<typeof questionSchema>;

export const replySchema = v.strictObject({
  service,
  /** What the home calls itself, where its policy lets it say so. */
  title: v.exactOptional(v.pipe(v.string(), v.maxLength(120))),
  /** For each hash, in the order asked. */
  used: v.array(v.boolean()),
  proof: v.string(),
});
export type Reply = v.InferOutput<typeof replySchema>;

/** Shows that the question comes from a home of the group, as it is. */
export const proofOf = (key: Uint8Array, asked: Question): string =>
  keyed(key, ['ask', asked.service, asked.at, asked.onTests, ...asked.hashes].join('\n'));

/** Shows that the answer comes from a home of the group, and to this very question. */
export const replyProof = (
  key: Uint8Array,
  question: string,
  { service, title, used }: Omit<Reply, 'proof'>,
): string => keyed(key, ['answer', question, service, title ?? '', used.join()].join('\n'));

export function sameProof(given: unknown, wanted: string): boolean {
  const [a, b] = [Buffer.from(typeof given === 'string' ? given : ''), Buffer.from(wanted)];
  return a.length === b.length && timingSafeEqual(a, b);
}
