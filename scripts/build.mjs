// Builds app and server when their sources have changed, as `npm start` does.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { buildIfChanged } from './start/build.mjs';

const root = join(import.meta.dirname, '..');
await buildIfChanged(root, (command, args) => {
  // Built by a test too, it is what a tablet gets: NODE_ENV=test would make a fuller one for trying.
  const env = { ...process.env, NODE_ENV: 'production' };
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit', env });
  return status === 0
    ? Promise.resolve()
    : Promise.reject(new Error(`${command} ended with ${status}`));
});
