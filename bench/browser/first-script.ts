import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { firstScript } from '../../test/tablet/first-script.ts';

// What a tablet loads before anything can be touched.
const app = join(import.meta.dirname, '..', '..', 'dist', 'app');
const kB = (bytes: number) => `${Math.round(bytes / 1000)} kB gzip`;

if (existsSync(join(app, 'index.html'))) {
  const { files, size, pinHash, scriptsInAll } = firstScript(app);
  console.log(
    `${kB(size)} in ${files.length} files (aim 150 kB); the hash of a PIN ${kB(pinHash)} more; ${scriptsInAll} scripts in all`,
  );
} else {
  console.log('skipped: build first (npm start builds)');
}
