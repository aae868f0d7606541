import type { ReportedResult } from '../../exchange/results/reported.ts';
import { placeText } from '../../exchange/results/reported.ts';
import { withResults } from '../../server/operations/results.ts';
import { folderOf } from '../upkeep/command.ts';
import { world } from '../upkeep/main.ts';
import { ListProblem } from './list-problem.ts';
import { type Beforehand, formatOfFile, readReports } from './read-reports.ts';

/** More than a laboratory sends a home in years. */
const MOST_REPORTS = 20_000;

export interface Summary {
  readonly linked: number;
  readonly held: number;
  readonly unchanged: number;
  readonly leftOut: number;
  /** How often each reason for which a report waits, or was left out, was met. */
  readonly reasons: Readonly<Record<string, number>>;
  readonly kept: boolean;
}

/**
 * What a file would do in a service, report by report; with `keep` it is done. Says the place, the fate
 * and the reasons of each: no names, no codes, no results.
 */
export async function holdAgainst(
  file: string,
  options: Pick<Beforehand, 'dates'> & { readonly data: string; readonly keep: boolean },
  say: (line: object) => void,
): Promise<Summary> {
  const source = formatOfFile(file);
  return withResults(folderOf(options), world, options, async ({ zone, mapping, take }) => {
    const reports: ReportedResult[] = [];
    const words = new Map(mapping?.words.map(({ says, means }) => [says, means]) ?? []);
    const dates = options.dates ?? mapping?.dates;
    await readReports(file, { zone, dates, words, remembered: mapping?.columns }, (report) => {
      if (reports.length === MOST_REPORTS)
        throw new ListProblem({
          ...{ problem: 'too-many', detail: `Over ${MOST_REPORTS} reports. Split the list.` },
        });
      reports.push(report);
    });
    const count = { linked: 0, held: 0, unchanged: 0, 'left-out': 0 };
    const reasons: Record<string, number> = {};
    for (const { place, ...report } of reports) {
      // A cell with a formula says what somebody's program worked out, not what was reported.
      const formula = report.asks.some(({ ask }) => ask === 'formula');
      const taken = formula
        ? ({ fate: 'left-out', reasons: ['formula'] } as const)
        : await take(report, source);
      const why: readonly string[] = 'reasons' in taken ? taken.reasons : [];
      count[taken.fate] += 1;
      for (const reason of why) reasons[reason] = (reasons[reason] ?? 0) + 1;
      say({ place: placeText(place), fate: taken.fate, ...(why.length > 0 && { reasons: why }) });
    }
    const { 'left-out': leftOut, ...rest } = count;
    return { ...rest, leftOut, reasons, kept: options.keep };
  });
}
