import { toJsonSchema } from '@valibot/to-json-schema';
import type * as v from 'valibot';
import { COMMANDS } from './commands.ts';
import type { StatisticModule } from './statistic-command.ts';

const isStatistic = (module: object): module is StatisticModule => 'definition' in module;

/** The statistic commands: those that read and write one JSON document. */
export async function statisticModules(): Promise<readonly StatisticModule[]> {
  const modules = await Promise.all(Object.values(COMMANDS).map((entry) => entry.load()));
  return modules.filter(isStatistic);
}

function schemaText(schema: v.GenericSchema, title: string, typeMode: 'input' | 'output'): string {
  // Finite numbers are all that JSON has; what only shows between fields, a schema cannot say.
  const body = toJsonSchema(schema, {
    typeMode,
    target: 'draft-2020-12',
    ignoreActions: ['finite', 'raw_check'],
  });
  return `${JSON.stringify({ $schema: 'https://json-schema.org/draft/2020-12/schema', title, ...body }, null, 2)}\n`;
}

/** JSON Schemas of every statistic command, by file name. */
export async function schemaFiles(): Promise<ReadonlyMap<string, string>> {
  const files = new Map<string, string>();
  for (const { definition } of await statisticModules()) {
    files.set(
      `${definition.name}.input.json`,
      schemaText(definition.input, `tallyround ${definition.name}: input`, 'input'),
    );
    files.set(
      `${definition.name}.output.json`,
      schemaText(definition.output, `tallyround ${definition.name}: output`, 'output'),
    );
  }
  return files;
}
