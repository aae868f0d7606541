// `npm run --silent oracle -- FILE.json ...`: judges the statistics against outside check values.

import { readFiles, readOwnChecks } from './oracle/read-checks.ts';
import { ADAPTERS } from './oracle/registry.ts';
import { report } from './oracle/report.ts';
import { passed, runChecks } from './oracle/run-checks.ts';

const paths = process.argv.slice(2);
const own = readOwnChecks();
const { files, problems } =
  paths.length > 0 ? readFiles(paths) : { files: [own], problems: [] as readonly string[] };
// A file's own checks come before those of others where one is named by id.
const others = [...own, ...files.flat()];
const verdicts = files.flatMap((checks) => runChecks(checks, ADAPTERS, others));
for (const problem of problems) console.error(problem);
for (const line of report(verdicts, problems.length)) console.log(line);
process.exitCode = problems.length === 0 && verdicts.every(passed) ? 0 : 1;
