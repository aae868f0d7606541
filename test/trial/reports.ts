import type { TestId } from '../../src/care/ids.ts';
import type { Verdict } from '../../src/care/quality/facts.ts';
import type { Finding, FindingKind } from '../../src/care/quality/finding.ts';
import { isOpenFinding } from '../../src/care/quality/finding.ts';
import { findings } from '../../src/care/quality/findings.ts';
import { outcomeOf } from '../../src/care/results/outcome.ts';
import type { Day } from '../../src/care/time.ts';
import { settleFinding } from '../../src/procedures/settle-finding.ts';
import type { Incoming } from '../../src/procedures/take-in-results.ts';
import { takeInResults } from '../../src/procedures/take-in-results.ts';
import type { Trial } from './home.ts';
import { asSenior } from './house.ts';
import { kitCode } from './round.ts';

/** A report on kit 1, 2 or 3 of the house, with the birth date of whoever it was used for. */
export const reportOn = (at: number, more: Partial<Incoming> = {}): Incoming => ({
  ...{ codes: [kitCode(at)], outcome: 'negative', said: 'Not detected', status: 'final' },
  ...{ reported: '2026-03-03' as Day, name: '', born: `${1940 + at}-06-02` as Day, reference: '' },
  ...{ report: `L-${at}`, laboratory: 'The demo laboratory', tests: [], asks: [] },
  ...more,
});

/** Takes in a file until nothing is left of it. */
export function takeIn(trial: Trial, ...reports: readonly Incoming[]): void {
  for (;;) {
    const taken = takeInResults(trial.home, { reports, source: 'csv' }, trial.doing);
    if (trial.must(taken).length === 0) return;
  }
}

/** What an outcome says in one word: its state, or the result that is known. */
export function saysOf({ home }: Trial, test: TestId): string {
  const outcome = outcomeOf(home, test);
  return outcome.state === 'known' ? outcome.result.data.outcome : outcome.state;
}

export const openKinds = ({ home }: Trial): FindingKind[] =>
  findings(home)
    .filter((found) => isOpenFinding(home, found))
    .map(({ kind }) => kind);

export function foundAs({ home }: Trial, kind: FindingKind): Finding {
  const found = findings(home).find((each) => each.kind === kind);
  if (found === undefined) throw new Error(`no ${kind}`);
  return found;
}

/** A senior settles the finding of this kind; `keeps` picks the side with these data. */
export function settleAs(
  trial: Trial,
  kind: FindingKind,
  verdict: Verdict,
  keeps: Readonly<Record<string, string>> = {},
): void {
  const found = foundAs(trial, kind);
  const kept = found.members.find((id) => {
    const data = trial.home.known.get(id)?.data as Readonly<Record<string, unknown>> | undefined;
    return Object.entries(keeps).every(([key, value]) => data?.[key] === value);
  });
  const picked = verdict === 'one-stands' && kept !== undefined ? { keeps: kept } : {};
  const settle = { finding: found.id, seen: found.members, verdict, reason: 'Asked.', ...picked };
  trial.must(settleFinding(asSenior(trial).home, settle, trial.doing));
}
