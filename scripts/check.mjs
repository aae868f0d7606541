// `npm run check`: everything that can be said about the code without running it.
import { spawnSync } from 'node:child_process';

const steps = [
  ['format', 'biome', ['check']],
  ['types: pure', 'tsc', ['-p', 'tsconfig.pure.json']],
  ['types: node', 'tsc', ['-p', 'tsconfig.node.json']],
  ['types: app', 'tsc', ['-p', 'tsconfig.app.json']],
  ['types: test', 'tsc', ['-p', 'tsconfig.test.json']],
  ['lint', 'eslint', ['--max-warnings', '0', '.']],
  ['import rules', 'depcruise', ['--output-type', 'err', 'src']],
  ['dead code', 'knip', []],
];

const failed = [];
for (const [name, command, args] of steps) {
  process.stdout.write(`${name} … `);
  const run = spawnSync(`node_modules/.bin/${command}`, args, { encoding: 'utf8' });
  console.log(run.status === 0 ? 'ok' : 'failed');
  if (run.status !== 0) {
    failed.push(name);
    console.log(run.stdout, run.stderr);
  }
}
if (failed.length > 0) {
  console.log(`check failed: ${failed.join(', ')}`);
  process.exit(1);
}
