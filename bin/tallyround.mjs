#!/usr/bin/env node
// Starts the command line from its TypeScript source: nothing to build after npm install.
import { register } from 'tsx/esm/api';

register();
const { main } = await import('../src/cli/main.ts');
await main(process.argv.slice(2));
