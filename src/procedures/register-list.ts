import type { NewFact } from '../care/catalogue.ts';
import { testByCode } from '../care/custody/test-by-code.ts';
import type { Home } from '../care/home.ts';
import type { TestId } from '../care/ids.ts';
import type { Code } from '../care/kind.ts';
import type { Refusal } from '../care/refusal.ts';
import { allow, refuse } from '../care/refusal.ts';
import type { Doing, Outcome } from './doing.ts';
import { register } from './register.ts';

/** One line of a list that came back: a code and the reference for it, or why it cannot be kept. */
export interface PairLine {
  /** Counted from 1, blank lines included. */
  readonly line: number;
  readonly text: string;
  readonly found:
    | { readonly ok: true; readonly test: TestId; readonly reference: string }
    | { readonly ok: false; readonly why: 'not-a-pair' | 'twice' }
    | { readonly ok: false; readonly why: 'refused'; readonly refusal: Refusal };
}

/**
 * Reads what was pasted, each line by itself: a code and its reference, in either order, between
 * spaces, tabs, commas or semicolons. Nothing is kept; a line that says a thing twice is not guessed at.
 */
export function readPairs(home: Home, pasted: string, doing: Doing): PairLine[] {
  const lines = pasted
    .split(/\r\n|\r|\n/)
    .map((text, at) => ({ line: at + 1, text: text.trim() }))
    .filter(({ text }) => text !== '')
    .map(({ line, text }) => ({ line, text, found: readLine(home, text, doing) }));
  return lines.map((each) => (isRepeated(each, lines) ? { ...each, found: TWICE } : each));
}

const TWICE = { ok: false, why: 'twice' } as const;

function readLine(home: Home, text: string, doing: Doing): PairLine['found'] {
  const cells = text.split(/[\s,;]+/).map((cell) => cell.replaceAll(/^"|"$/g, ''));
  const [first, second] = cells;
  if (cells.length !== 2 || first === undefined || second === undefined || second === '')
    return { ok: false, why: 'not-a-pair' };
  const [code, reference] =
    testByCode(home, first as Code) === undefined && testByCode(home, second as Code) !== undefined
      ? [second, first]
      : [first, second];
  const test = testByCode(home, code as Code)?.id;
  if (test === undefined)
    return { ok: false, why: 'refused', refusal: { reason: 'code-unknown', code } };
  const outcome = register(home, { test, reference }, doing);
  return outcome.ok
    ? { ok: true, test, reference }
    : { ok: false, why: 'refused', refusal: outcome };
}

/** Another line speaks of the same test, or gives the same reference. */
function isRepeated(mine: PairLine, lines: readonly PairLine[]): boolean {
  const { found } = mine;
  if (!found.ok) return false;
  return lines.some(
    (other) =>
      other.line !== mine.line &&
      other.found.ok &&
      (other.found.test === found.test || other.found.reference === found.reference),
  );
}

/** Registers the lines that were read well, as they were shown. */
export function registerPairs(home: Home, lines: readonly PairLine[], doing: Doing): Outcome {
  const facts: NewFact[] = [];
  for (const { found } of lines) {
    if (!found.ok) continue;
    const outcome = register(home, found, doing);
    if (!outcome.ok) return outcome;
    facts.push(...outcome.value);
  }
  return facts.length === 0 ? refuse({ reason: 'empty', field: 'pairs' }) : allow(facts);
}
