import type { NewFact } from '../care/catalogue.ts';
import { testByCode } from '../care/custody/test-by-code.ts';
import { turnOf } from '../care/custody/turn.ts';
import type { Home } from '../care/home.ts';
import type { PersonId, StaffId, TestId } from '../care/ids.ts';
import type { Code, How } from '../care/kind.ts';
import { personOf } from '../care/people/person.ts';
import { heldBy } from '../care/quality/held.ts';
import { ABOUT_RESULTS } from '../care/quality/rulings.ts';
import { allow, refuse } from '../care/refusal.ts';
import type { Action } from '../care/results/actions.ts';
import { actionsFor } from '../care/results/actions.ts';
import { replacedByCorrection, before as standingOn } from '../care/results/counting.ts';
import type { ActionKind, Outcome as TestOutcome } from '../care/results/facts.ts';
import { registrationOf } from '../care/results/outcome.ts';
import { memberOf, workingHere } from '../care/staff/member.ts';
import { ranks } from '../care/staff/rights.ts';
import type { Day, Instant } from '../care/time.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';
import { needsSecond, ruledOut, witnesses } from './second-person.ts';

export interface GivenResult {
  readonly code: string;
  readonly how: How;
  readonly outcome: TestOutcome;
  /** The day printed on the result. */
  readonly reported: Day;
  /** The second identifier on it: a birth date, a name or the registration's reference. */
  readonly second:
    | { readonly is: 'born' | 'name' | 'reference'; readonly value: string }
    | undefined;
  /** The colleague who read the code too, where it was typed and looks like another. */
  readonly reader?: StaffId;
  /** This corrects or withdraws what was reported before. */
  readonly corrects?: boolean;
  /** Nothing on it matches the person: kept all the same, and held until a senior has settled it. */
  readonly doubtful?: boolean;
}

/** Which test a code names, for showing back before anything is kept. */
export function testNamed(
  home: Home,
  code: string,
): { test: TestId; person: PersonId } | undefined {
  const test = testByCode(home, code.trim() as Code);
  const person = test?.turn === undefined ? undefined : turnOf(home, test.turn)?.person;
  return test === undefined || person === undefined ? undefined : { test: test.id, person };
}

/**
 * A result by its code, kept only if a second identifier agrees with the person the code leads to.
 * One for a code nobody here used is kept too, and so is one that is given as doubtful, each as a
 * finding: it physically came.
 */
export function recordResult(home: Home, given: GivenResult, doing: Doing): Outcome {
  if (given.reported > today(home, doing))
    return refuse({ reason: 'in-the-future', field: 'reported' });
  const code = given.code.trim() as Code;
  const read = {
    code,
    how: given.how,
    ...(given.reader !== undefined && { second: given.reader }),
  };
  const unsure = needsSecond(home, read, doing);
  if (unsure !== undefined) return refuse(unsure);
  const fact = factOf(given, { ...ruledOut(home, read), ...witnesses(doing, [given.reader]) });
  const named = testNamed(home, code);
  if (named === undefined) return allow([fact({ code, matched: 'none', replaces: [] })]);
  const { test } = named;
  if (given.second === undefined || !agrees(home, named, given.second)) {
    if (given.doubtful !== true) return refuse({ reason: 'second-identifier-differs' });
    return allow([fact({ code, test, matched: 'none', replaces: [] })]);
  }
  const [last] = standingOn(home, named.test);
  if (last !== undefined && given.corrects !== true) {
    return refuse({ reason: 'result-exists', outcome: last.data.outcome, at: last.at });
  }
  const replaces = replacedByCorrection(home, test);
  if (replaces.length > 0 && isHeld(home, test) && !ranks(home, doing.by, 'senior'))
    return refuse({ reason: 'result-held' });
  return allow([fact({ code, test, matched: given.second.is, replaces })]);
}

/** In doubt, and for a senior to settle. Where only its owner is not known the right result ends the doubt. */
const isHeld = (home: Home, test: TestId): boolean =>
  heldBy(home, test).some(({ kind }) => ABOUT_RESULTS.has(kind) && kind !== 'result-unmatched');

type Recorded = Extract<NewFact, { kind: 'result.recorded' }>;

type Found = Pick<Recorded['data'], 'code' | 'test' | 'matched'> & {
  replaces: NonNullable<Recorded['data']['replaces']>;
};

const factOf =
  (
    { outcome, how, reported }: GivenResult,
    { near, ...others }: { readonly near?: Code[]; readonly with?: StaffId[] },
  ) =>
  ({ replaces, ...found }: Found): Recorded => ({
    kind: 'result.recorded',
    data: {
      ...{ ...found, outcome, how, reported },
      ...(near !== undefined && { near }),
      ...(replaces.length > 0 && { replaces }),
    },
    ...others,
  });

/**
 * Whether the second detail on a result is that of the person its code leads to. Compared without
 * case, accents or spaces; nothing is guessed and nothing is near enough.
 */
export function agrees(
  home: Home,
  named: { test: TestId; person: PersonId },
  second: NonNullable<GivenResult['second']>,
): boolean {
  const person = personOf(home, named.person);
  const known =
    second.is === 'born'
      ? person.born
      : second.is === 'name'
        ? person.name
        : registrationOf(home, named.test).registered?.data.reference;
  return known !== undefined && plain(known) !== '' && plain(known) === plain(second.value);
}

const plain = (text: string): string =>
  text.normalize('NFKD').replace(/\p{M}/gu, '').replace(/\s+/g, '').toLocaleLowerCase('en');

/** Somebody rang about a late result: whom, what was said, when to ring again. */
export const chaseResult = (
  chase: {
    readonly test: TestId;
    readonly whom: string;
    readonly said: string;
    readonly next?: Instant;
  },
  doing: Doing,
): Outcome => {
  if (chase.next !== undefined && chase.next <= doing.now)
    return refuse({ reason: 'in-the-past', field: 'next' });
  if (chase.whom.trim() === '') return refuse({ reason: 'empty', field: 'whom' });
  if (chase.said.trim() === '') return refuse({ reason: 'empty', field: 'said' });
  const next = chase.next === undefined ? {} : { next: chase.next };
  return allow([
    {
      kind: 'result.chased',
      data: { test: chase.test, ...next },
      private: { whom: chase.whom.trim(), said: chase.said.trim() },
    },
  ]);
};

const find = (home: Home, test: TestId, kind: ActionKind): Action | undefined =>
  actionsFor(home, test).find((action) => action.kind === kind);

/** Gives an action of a result to a named person, by a time. */
export function nameAction(
  home: Home,
  {
    test,
    action,
    who,
    due,
  }: {
    readonly test: TestId;
    readonly action: ActionKind;
    readonly who: StaffId;
    readonly due: Instant;
  },
  doing: Doing,
): Outcome {
  const found = find(home, test, action);
  if (found === undefined) return refuse({ reason: 'result-superseded' });
  if (due <= doing.now) return refuse({ reason: 'in-the-past', field: 'due' });
  if (!workingHere(memberOf(home, who), today(home, doing)))
    return refuse({ reason: 'not-working-here', staff: who });
  const replaces = found.named === undefined ? {} : { replaces: [found.named.id] };
  return allow([
    {
      kind: 'action.named',
      data: { test, result: found.rests, action, who, due, ...replaces },
    },
  ]);
}

export function doAction(
  home: Home,
  done: {
    readonly test: TestId;
    readonly action: ActionKind;
    readonly outcome: 'done' | 'not-needed';
    readonly note: string;
  },
): Outcome {
  const found = find(home, done.test, done.action);
  if (found === undefined) return refuse({ reason: 'result-superseded' });
  if (done.outcome === 'not-needed' && done.note.trim() === '')
    return refuse({ reason: 'reason-missing' });
  const { test, action, outcome } = done;
  const replaces = [found.done, found.before].flatMap((each) => each?.id ?? []);
  return allow([
    {
      kind: 'action.done',
      data: {
        ...{ test, action, outcome, result: found.rests },
        ...(replaces.length > 0 && { replaces }),
      },
      private: { note: done.note.trim() },
    },
  ]);
}
