import { readFileSync } from 'node:fs';
import { text } from 'node:stream/consumers';
import type { Command } from 'commander';
import { parse as parseCsv } from 'csv-parse/sync';
import * as v from 'valibot';
import type { Outcome } from '../statistics/refusal/refusal.ts';
import type { CommandModule } from './command-module.ts';
import { LINE } from './fields.ts';
import { inputErrors } from './input-errors.ts';
import { jsonFault } from './json-fault.ts';

/** A row of a CSV file by its columns; it knows the line it stands on. */
export type CsvRow = Readonly<Record<string, string>> & { readonly [LINE]?: number };
type AnySchema = v.GenericSchema;

/** A command that reads one JSON (or CSV) document and writes one JSON document. */
export interface StatisticCommand<Input extends AnySchema, Output extends AnySchema> {
  readonly name: string;
  /** What it answers, in two or three plain lines. */
  readonly description: string;
  readonly input: Input;
  readonly output: Output;
  /** Shown by --help, and run by the tests. */
  readonly example: v.InferInput<Input>;
  /** Columns of a CSV file, if one may be given; the rest of the input comes with --with. */
  readonly csv?: { readonly columns: string; readonly read: (rows: readonly CsvRow[]) => object };
  readonly run: (
    input: v.InferOutput<Input>,
    flags?: Readonly<Record<string, unknown>>,
  ) => Outcome<v.InferInput<Output>>;
  /** Options of its own: how they are written, and what they mean. */
  readonly flags?: readonly (readonly [flags: string, description: string])[];
  /** The answer as lines of text, for --table. */
  readonly table?: (answer: v.InferOutput<Output>, input: v.InferOutput<Input>) => string;
  /** The exit code that tells a script what the answer was; 0 unless given. */
  readonly exitCode?: (answer: v.InferOutput<Output>) => number;
  /** More for --help. */
  readonly notes?: string;
}

/** A statistic command's file exports this besides `register`, for schemas and tests. */
export interface StatisticModule extends CommandModule {
  readonly definition: StatisticCommand<AnySchema, AnySchema>;
}

interface Options extends Readonly<Record<string, unknown>> {
  readonly csv?: boolean;
  readonly with?: string;
  readonly table?: boolean;
}

/** An error in what was given: shown without a stack, exit code 2. */
class InputError extends Error {}

function parseJson(what: string, json: string): unknown {
  const fault = jsonFault(json);
  if (fault !== undefined) throw new InputError(`${what} is not JSON, at ${fault}`);
  return JSON.parse(json);
}

async function readText(file: string | undefined): Promise<string> {
  if (file === undefined || file === '-') return text(process.stdin);
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw new InputError(`cannot read ${file}: ${(error as Error).message}`);
  }
}

function rowsOf(content: string): readonly CsvRow[] {
  const settings = { columns: true, trim: true, skip_empty_lines: true, bom: true } as const;
  const read = parseCsv(content, { ...settings, info: true }) as unknown as readonly {
    readonly record: Record<string, string>;
    readonly info: { readonly lines: number };
  }[];
  return read.map(({ record, info }) => Object.assign(record, { [LINE]: info.lines }));
}

function fromCsv({ name, csv }: StatisticCommand<AnySchema, AnySchema>, content: string): object {
  if (!csv) throw new InputError(`${name} takes JSON only`);
  try {
    return csv.read(rowsOf(content));
  } catch (error) {
    throw new InputError(`the CSV cannot be read: ${(error as Error).message}`);
  }
}

async function readInput(
  definition: StatisticCommand<AnySchema, AnySchema>,
  file: string | undefined,
  options: Options,
): Promise<unknown> {
  const content = await readText(file);
  const isCsv = options.csv === true || file?.toLowerCase().endsWith('.csv') === true;
  const base = isCsv ? fromCsv(definition, content) : parseJson('the input', content);
  if (options.with === undefined) return base;
  return { ...(base as object), ...(parseJson('--with', options.with) as object) };
}

async function answer(
  definition: StatisticCommand<AnySchema, AnySchema>,
  file: string | undefined,
  options: Options,
): Promise<string> {
  const parsed = v.safeParse(definition.input, await readInput(definition, file, options));
  if (!parsed.success)
    throw new InputError(`the input is not right:\n${inputErrors(parsed.issues).join('\n')}`);
  const outcome = definition.run(parsed.output, options);
  if (!outcome.ok) throw new InputError(`${outcome.detail} (${outcome.reason})`);
  const found = v.parse(definition.output, outcome.value);
  process.exitCode = definition.exitCode?.(found) ?? 0;
  return options.table === true && definition.table
    ? definition.table(found, parsed.output)
    : JSON.stringify(found, null, 2);
}

function helpText({
  name,
  example,
  csv,
  notes = '',
}: StatisticCommand<AnySchema, AnySchema>): string {
  const columns = csv
    ? `\nA CSV file needs a first line with: ${csv.columns}. What else is needed goes in --with.\n`
    : '';
  return `${columns}${notes && `\n${notes}\n`}
Example:
  echo '${JSON.stringify(example)}' | tallyround ${name}

The input and the answer are described in docs/schemas/${name}.input.json and ${name}.output.json.`;
}

/** The module that a statistic command's file exports. */
export function statisticCommand<Input extends AnySchema, Output extends AnySchema>(
  definition: StatisticCommand<Input, Output>,
): StatisticModule {
  const general = definition as unknown as StatisticCommand<AnySchema, AnySchema>;
  const register = (program: Command): void => {
    const command = program
      .command(general.name)
      .description(general.description)
      .argument('[file]', 'JSON or CSV file; standard input if left out')
      .option('--csv', 'standard input is CSV')
      .option('--with <json>', 'more fields of the input, as a JSON object')
      .addHelpText('after', helpText(general))
      .action(async (file: string | undefined, options: Options) => {
        try {
          process.stdout.write(`${await answer(general, file, options)}\n`);
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
          process.stderr.write(`tallyround ${general.name}: ${error.message}\n`);
          process.exitCode = 2;
        }
      });
    for (const [flags, description] of general.flags ?? []) command.option(flags, description);
    if (general.table) command.option('--table', 'a table to read instead of JSON');
  };
  return { definition: general, register };
}
