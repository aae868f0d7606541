import { nearCodes } from '../care/custody/near-codes.ts';
import type { Home } from '../care/home.ts';
import type { StaffId } from '../care/ids.ts';
import type { Code, How } from '../care/kind.ts';
import type { Refusal } from '../care/refusal.ts';
import { memberOf, workingHere } from '../care/staff/member.ts';
import type { Doing } from './doing.ts';
import { today } from './doing.ts';

/** A code as it came in, and the colleague who read the label too, where one had to. */
export interface ReadCode {
  readonly code: string;
  readonly how: How;
  readonly second?: StaffId;
}

/**
 * A code typed by hand that is nearly another live one may be a slip onto somebody else's tube, and
 * two tries by one person slip alike. It has to be scanned, or read by a second person.
 */
export function needsSecond(home: Home, read: ReadCode, doing: Doing): Refusal | undefined {
  if (read.how === 'scanned') return undefined;
  const code = read.code.trim() as Code;
  const near = nearCodes(home, code);
  if (near.length === 0) return undefined;
  if (read.second === undefined) return { reason: 'code-near', code, near };
  const other = workingHere(memberOf(home, read.second), today(home, doing));
  return other && read.second !== doing.by ? undefined : { reason: 'second-person-same' };
}

/**
 * What to keep of it: which near misses a second person ruled out. Who that was stands in the fact's
 * `with`, beside whoever else was there.
 */
export function ruledOut(home: Home, read: ReadCode): { readonly near?: Code[] } {
  if (read.how === 'scanned' || read.second === undefined) return {};
  const near = nearCodes(home, read.code.trim() as Code);
  return near.length === 0 ? {} : { near: [...near] };
}

/** Those who were there, each once; undefined where nobody else was. */
export function witnesses(
  doing: Doing,
  others: readonly (StaffId | undefined)[],
): { readonly with?: StaffId[] } {
  const names = new Set(others.flatMap((each) => each ?? []));
  names.delete(doing.by);
  return names.size === 0 ? {} : { with: [...names] };
}
