// Builds app and server when their sources have changed, as `npm start` does.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { buildIfChanged } from './start/build.mjs';

const root = join(import.meta.dirname, '..');
await buildIfChanged(root, (command, args) => {
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit' });
  return status === 0
    ? Promise.resolve()
    : Promise.reject(new Error(`${command} ended with ${status}`));
});
