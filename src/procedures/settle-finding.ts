import type { Home } from '../care/home.ts';
import type { FactId } from '../care/ids.ts';
import type { Verdict } from '../care/quality/facts.ts';
import { standingOf } from '../care/quality/finding.ts';
import { findings } from '../care/quality/findings.ts';
import { verdictsFor } from '../care/quality/verdicts.ts';
import { allow, refuse } from '../care/refusal.ts';
import { ranks } from '../care/staff/rights.ts';
import type { Doing, Outcome } from './doing.ts';

/** A senior settles a finding, having seen all of it, with a reason. Replaces what stood before. */
export function settleFinding(
  home: Home,
  settle: {
    readonly finding: string;
    /** What was on the screen: if more has come since, it is shown first. */
    readonly seen: readonly FactId[];
    readonly verdict: Verdict;
    readonly keeps?: FactId;
    readonly reason: string;
  },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'senior')) return refuse({ reason: 'needs-senior' });
  if (settle.reason.trim() === '') return refuse({ reason: 'reason-missing' });
  const found = findings(home).find((each) => each.id === settle.finding);
  const seen = new Set(settle.seen);
  if (found === undefined || !found.members.every((id) => seen.has(id))) {
    return refuse({ reason: 'finding-gone' });
  }
  if (!verdictsFor(found.kind).includes(settle.verdict)) return refuse({ reason: 'verdict-unfit' });
  const picked = settle.keeps !== undefined && found.members.includes(settle.keeps);
  if (settle.verdict === 'one-stands' && !picked) return refuse({ reason: 'keeps-missing' });
  const before = standingOf(home, found);
  const replaces =
    before.state === 'settled-differently'
      ? before.settlements.map((each) => each.id)
      : before.state === 'settled'
        ? [before.settlement.id]
        : before.state === 'reopened'
          ? [before.last.id]
          : [];
  return allow([
    {
      kind: 'settled',
      data: {
        finding: found.id,
        members: [...found.members],
        verdict: settle.verdict,
        ...(settle.verdict === 'one-stands' && picked && { keeps: settle.keeps }),
        ...(replaces.length > 0 && { replaces }),
      },
      private: { reason: settle.reason.trim() },
    },
  ]);
}
