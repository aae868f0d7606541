// `npm run --silent oracle -- FILE.json`: judges the statistics against outside check values.

import { readChecks, readOwnChecks } from './oracle/read-checks.ts';
import { ADAPTERS } from './oracle/registry.ts';
import { report } from './oracle/report.ts';
import { passed, runChecks } from './oracle/run-checks.ts';

const files = process.argv.slice(2);
const own = readOwnChecks();
try {
  const checks = files.length > 0 ? files.flatMap(readChecks) : own;
  const verdicts = runChecks(checks, ADAPTERS, own);
  for (const line of report(verdicts)) console.log(line);
  process.exitCode = verdicts.every(passed) ? 0 : 1;
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  console.log('0 passed, 1 failed');
  process.exitCode = 1;
}
