// `npx tsx scripts/make-schemas.ts`: writes docs/schemas/ anew from the commands' own schemas.
import { mkdirSync, writeFileSync } from 'node:fs';
import { schemaFiles } from '../src/cli/schemas.ts';

mkdirSync('docs/schemas', { recursive: true });
for (const [name, text] of await schemaFiles()) writeFileSync(`docs/schemas/${name}`, text);
