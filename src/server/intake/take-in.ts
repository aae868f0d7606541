import { idFromBytes, type StaffId } from '../../care/ids.ts';
import type { ReportSource } from '../../care/results/facts.ts';
import { instantOf } from '../../care/time.ts';
import type { ReportedResult } from '../../exchange/results/reported.ts';
import { takeInResults } from '../../procedures/take-in-results.ts';
import type { Parts } from '../parts.ts';
import type { HomeReader } from '../service/home-reader.ts';
import { keepAsArrived, pen, serverDesk } from '../service/write-facts.ts';

/** Who takes in what a gateway sends: no member of staff, and with no right to settle anything. */
const GATEWAY = 'gateway' as StaffId;

export type TakenIn =
  | { readonly ok: true; readonly kept: number; readonly linked: number }
  | { readonly ok: false; readonly reason: string };

/**
 * Takes reports in on the server's own chain: those that fit onto their records, the rest into the tray.
 * All of a message or nothing of it: the facts are decided and written in one turn of the lock.
 */
export function takeIn(
  { ledger, random, now }: Pick<Parts, 'ledger' | 'random' | 'now'>,
  reader: HomeReader,
  {
    reports,
    source,
  }: { readonly reports: readonly ReportedResult[]; readonly source: ReportSource },
): Promise<TakenIn> {
  return ledger.lock(async () => {
    let kept = 0;
    let linked = 0;
    for (;;) {
      const home = await reader.read();
      const at = instantOf(now());
      const doing = { now: at, by: GATEWAY, device: 'server', draw: () => idFromBytes(random(12)) };
      const outcome = takeInResults(home, { reports, source }, doing);
      if (!outcome.ok) return { ok: false, reason: outcome.reason };
      if (outcome.value.length === 0) return { ok: true, kept, linked };
      const dated = outcome.value.map((fact) => ({ ...fact, at, by: GATEWAY }));
      await keepAsArrived(ledger, pen(dated, await serverDesk(ledger, random)));
      kept += dated.filter(({ kind }) => kind === 'report.received').length;
      linked += dated.filter(({ kind }) => kind === 'result.recorded').length;
    }
  });
}
