import type { NewFact } from '../../care/catalogue.ts';
import { codeUse } from '../../care/custody/code.ts';
import { codeFault } from '../../care/custody/code-rules.ts';
import { triesAllow } from '../../care/custody/may-start.ts';
import type { Test } from '../../care/custody/test.ts';
import { testOf } from '../../care/custody/test.ts';
import type { Turn } from '../../care/custody/turn.ts';
import { turnOf } from '../../care/custody/turn.ts';
import type { Home } from '../../care/home.ts';
import type { TestId } from '../../care/ids.ts';
import type { Code } from '../../care/kind.ts';
import { kitKindOf, policyOn } from '../../care/policy/in-force.ts';
import type { Refusal } from '../../care/refusal.ts';
import { allow, refuse } from '../../care/refusal.ts';
import { roundOf } from '../../care/rounds/round.ts';
import type { Lot } from '../../care/supplies/stock.ts';
import { stockOf } from '../../care/supplies/stock.ts';
import type { Day, Instant } from '../../care/time.ts';
import type { Doing, Outcome } from '../doing.ts';
import { today } from '../doing.ts';
import { needsSecond, ruledOut, witnesses } from '../second-person.ts';
import type { TurnTouch } from './touch.ts';

type OpenKit = Extract<TurnTouch, { do: 'open-kit' }>;
type ReadLabel = Extract<TurnTouch, { do: 'read-label' }>;

/** Scan a. The spare label of the one kit to be opened: free, in date, of the round's kind. */
export function openKit(home: Home, turn: Turn, touch: OpenKit, doing: Doing): Outcome {
  const kitKind = roundOf(home, turn.round)?.planned.data.kitKind ?? '';
  const code = touch.code.trim() as Code;
  const on = today(home, doing);
  const lot = stockOf(home, kitKind).lotOfCode.get(code);
  const refusal =
    triesAllow(home, turn.person, { now: doing.now, changedMind: true, within: turn }) ??
    malformed(home, { kitKind, code: touch.code, on }) ??
    usedBefore(home, code) ??
    usedElsewhere(code, doing) ??
    unfit(lot, on) ??
    needsSecond(home, touch, doing);
  if (refusal !== undefined) return refuse(refusal);
  const test = doing.draw() as TestId;
  const known = lot && { lot: lot.lot, expires: lot.expires };
  return allow([
    {
      kind: 'kit.opened',
      data: {
        ...{ turn: turn.id, test, code, how: touch.how },
        ...ruledOut(home, touch),
        ...{ kitKind, ...known },
      },
      with: [...new Set([turn.pair.swabber, ...(touch.second ? [touch.second] : [])])],
    },
  ]);
}

/**
 * Does the code look like one of this kind of kit at all, and does its check character agree? A slip
 * is caught before anything is stored.
 */
export function malformed(
  home: Home,
  { kitKind, code, on }: { kitKind: string; code: string; on: Day },
): Refusal | undefined {
  const kit = kitKindOf(policyOn(home, on).policy, kitKind);
  const rule = kit && { pattern: kit.codePattern.value, scheme: kit.codeScheme };
  const fault = codeFault(rule ?? ANY_CODE, code);
  if (fault === undefined) return undefined;
  return { reason: fault === 'malformed' ? 'code-malformed' : 'code-check-failed', code };
}

/** What any barcode may be, for a kind of kit that the policy of the day does not name. */
const ANY_CODE = { pattern: '[\\x21-\\x7e]{4,48}', scheme: 'none' } as const;

/** A code that stands on a test, or was put aside, is never opened again. */
export function usedBefore(home: Home, code: Code): Refusal | undefined {
  const use = codeUse(home, code);
  if (use.use === 'free') return undefined;
  if (use.use === 'put-aside') return { reason: 'code-put-aside', code };
  const test = testOf(home, use.test);
  const person = test.turn === undefined ? undefined : turnOf(home, test.turn)?.person;
  const at = (test.spoiled ?? test.opened)?.at ?? ('' as Instant);
  return { reason: use.spoiled ? 'code-closed' : 'code-used', code, person, at };
}

/** Told by the server where it is reachable; a clash it did not tell in time is found later. */
function usedElsewhere(code: Code, doing: Doing): Refusal | undefined {
  const homes = doing.usedElsewhere?.(code);
  return homes === undefined ? undefined : { reason: 'code-elsewhere', code, homes };
}

function unfit(lot: Lot | undefined, on: Day): Refusal | undefined {
  if (lot === undefined) return undefined;
  if (lot.recalled) return { reason: 'kit-recalled', lot: lot.lot };
  return lot.expires < on ? { reason: 'kit-expired', on: lot.expires } : undefined;
}

/**
 * Scans b and c. The same code on the tube and on the bag. A scan that differs happened: it is kept,
 * and the whole kit is put aside. A code typed twice that differs may be a slip of two hands: it is
 * told first, and put aside only if staff say that the labels really differ.
 */
export function readLabel(home: Home, test: Test, touch: ReadLabel, doing: Doing): Outcome {
  const kitKind = test.opened?.data.kitKind ?? '';
  const refusal = malformed(home, { kitKind, code: touch.code, on: today(home, doing) });
  if (refusal !== undefined) return refuse(refusal);
  const code = touch.code.trim() as Code;
  const differs = code !== test.code;
  const unsure = differs ? undefined : needsSecond(home, touch, doing);
  if (unsure !== undefined) return refuse(unsure);
  if (differs && touch.how === 'typed-twice') return refuse({ reason: 'code-differs-typed', code });
  const place = test.stage === 'tube-labelled' ? ('bag' as const) : ('tube' as const);
  const ids = { turn: touch.turn, test: test.id };
  const facts: NewFact[] = [
    {
      kind: 'label.read',
      data: { ...ids, place, code, how: touch.how, ...ruledOut(home, touch) },
      ...witnesses(doing, [touch.second]),
    },
  ];
  if (differs) facts.push({ kind: 'kit.spoiled', data: { ...ids, why: 'labels-differ' } });
  return allow(facts);
}
