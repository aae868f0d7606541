// `npx tsx test/oracle/live/freeze.ts`: keeps R's answers to random questions in frozen.json, so
// that they are asked again where there is no R.
import { writeFileSync } from 'node:fs';
import { askR } from './ask.ts';

const checks = askR({ seed: 4711, tables: 1, others: 5 });
writeFileSync(new URL('../frozen.json', import.meta.url), `[\n${checks.map((c) => JSON.stringify(c)).join(',\n')}\n]\n`);
