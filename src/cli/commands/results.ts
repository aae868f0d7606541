import type { Command } from 'commander';
import { placeText } from '../../exchange/results/reported.ts';
import type { DateForm } from '../../exchange/spreadsheets/dates.ts';
import { faultWords } from '../../server/operations/words.ts';
import { holdAgainst } from '../results/hold-against.ts';
import { ListProblem } from '../results/list-problem.ts';
import { readReports } from '../results/read-reports.ts';

interface Options {
  readonly zone: string;
  readonly dates?: DateForm;
  readonly data?: string;
  readonly keep?: boolean;
}

const print = (value: object): void => void process.stdout.write(`${JSON.stringify(value)}\n`);

/** 0: nothing waits for anybody. 1: something does. Throws a ListProblem. */
async function work(file: string, { zone, dates, data, keep = false }: Options): Promise<0 | 1> {
  if (dates !== undefined && !['day-first', 'month-first'].includes(dates))
    throw wrong('--dates takes day-first or month-first.');
  if (keep && data === undefined) throw wrong('--keep needs --data FOLDER.');
  if (data !== undefined) {
    const done = await holdAgainst(file, { data, keep, dates }, print);
    print(done);
    return done.held + done.leftOut === 0 ? 0 : 1;
  }
  await readReports(file, { zone, dates }, ({ place, ...rest }) =>
    print({ place: placeText(place), ...rest }),
  );
  return 0;
}

const wrong = (detail: string) => new ListProblem({ problem: 'broken', detail });

/** What to say of something thrown; undefined for a fault of the program. */
function told(error: unknown, file: string): string | undefined {
  if (error instanceof ListProblem) {
    const { place } = error.told;
    return `${error.message}${place === undefined ? '' : ` (${placeText(place)})`}`;
  }
  const service = faultWords(error);
  if (service !== undefined) return service;
  const { code, path } = error as { code?: string; path?: string };
  return code === undefined || path !== file ? undefined : `cannot read ${file}: ${code}`;
}

export function register(program: Command): void {
  program
    .command('results')
    .description(
      'What stands in a file of results (CSV, XLSX, FHIR R4 JSON, HL7 v2.5.1 ORU^R01): one JSON document a\nline for each report, with its place, and what it leaves open. Nothing is kept, and nothing is guessed.\nWith --data: what it would do in a service; with --keep it is done.',
    )
    .argument('<file>', 'the file')
    .option('--zone <zone>', "the service's time zone", 'Europe/London')
    .option('--dates <form>', 'how dates like 03/04/2026 are written: day-first or month-first')
    .option(
      '--data <folder>',
      'hold it against the service in this folder: linked, held, unchanged',
    )
    .option('--keep', 'and keep it there')
    .addHelpText(
      'after',
      '\nThe formats are described in docs/results.md.\nExit code 0: read, and nothing waits. 1: read, and something waits for a senior or was left out.\n2: nothing was done; the place is told.',
    )
    .action(async (file: string, options: Options) => {
      // Whatever is made is for this user alone.
      process.umask(0o077);
      try {
        process.exitCode = await work(file, options);
      } catch (error) {
        const words = told(error, file);
        if (words === undefined) throw error;
        process.stderr.write(`tallyround results: ${words}\n`);
        process.exitCode = 2;
      }
    });
}
