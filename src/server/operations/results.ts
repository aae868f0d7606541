import { carriedPolicies } from '../../../policies/carried.ts';
import type { NewFact } from '../../care/catalogue.ts';
import type { Home } from '../../care/home.ts';
import { file } from '../../care/home.ts';
import type { FactId } from '../../care/ids.ts';
import { GATEWAY, idFromBytes } from '../../care/ids.ts';
import type { ReportSource } from '../../care/results/facts.ts';
import type { TrayReason } from '../../care/results/tray.ts';
import { instantOf } from '../../care/time.ts';
import type { Incoming, Mapping } from '../../procedures/take-in-results.ts';
import { fateOf, mappingOf, takeInResults } from '../../procedures/take-in-results.ts';
import type { Parts } from '../parts.ts';
import { HomeReader } from '../service/home-reader.ts';
import type { World } from '../service/open.ts';
import { keepAsArrived, pen, serverDesk } from '../service/write-facts.ts';
import { withService } from './existing.ts';

/** What became of one report. `in-the-future` is not even kept: no laboratory has said that yet. */
export type Taken =
  | { readonly fate: 'linked' | 'unchanged' }
  | { readonly fate: 'held'; readonly reasons: readonly TrayReason[] }
  | { readonly fate: 'left-out'; readonly reasons: readonly ['in-the-future'] };

/** A service whose records reports are held against. */
export interface ResultsDesk {
  readonly zone: string;
  /** How its last list was made, by whoever took it in on a tablet. */
  readonly mapping: Mapping | undefined;
  /** One report after another: a later one sees what an earlier one has done. */
  readonly take: (report: Incoming, source: ReportSource) => Promise<Taken>;
}

/**
 * Holds reports against a service's records as a tablet would, beside its server or without. Where
 * `keep` is false nothing is written: what an earlier report would do is only thought.
 */
export const withResults = <T>(
  folder: string,
  world: World,
  { keep }: { readonly keep: boolean },
  work: (desk: ResultsDesk) => Promise<T>,
): Promise<T> =>
  withService(folder, world, async (parts) => {
    const { zone } = parts.accounts.settings;
    const reader = new HomeReader(parts.ledger.store, { zone, policies: carriedPolicies() });
    const put = keep ? writing(parts) : thinking(parts);
    return work({
      zone,
      mapping: mappingOf(await reader.read()),
      take: async (report, source) => {
        const home = await reader.read();
        const doing = {
          ...{ now: instantOf(parts.now()), by: GATEWAY, device: 'server' },
          draw: () => idFromBytes(parts.random(12)),
        };
        const outcome = takeInResults(home, { reports: [report], source }, doing);
        if (!outcome.ok) return { fate: 'left-out', reasons: ['in-the-future'] };
        const fate = fateOf(home, report, source);
        await put(home, outcome.value);
        if (fate.fate === 'held') return { fate: 'held', reasons: fate.match.reasons };
        return { fate: fate.fate === 'linked' ? 'linked' : 'unchanged' };
      },
    });
  });

type Put = (home: Home, facts: readonly NewFact[]) => Promise<void>;

const writing =
  ({ ledger, random, now }: Parts): Put =>
  async (_home, facts) => {
    if (facts.length === 0) return;
    const dated = facts.map((fact) => ({ ...fact, at: instantOf(now()), by: GATEWAY }));
    await keepAsArrived(ledger, pen(dated, await serverDesk(ledger, random)));
  };

const thinking = ({ now }: Parts): Put => {
  let seq = 0;
  return (home, facts) => {
    for (const fact of facts) {
      seq += 1;
      const id = `thought-${seq}`.padEnd(43, '-') as FactId;
      file(home, { ...fact, id, at: instantOf(now()), by: GATEWAY, device: 'S0000000', seq });
    }
    return Promise.resolve();
  };
};
