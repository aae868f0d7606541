import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build, type Rolldown } from 'vite';
import { pureHash } from '../../src/ledger/hash.ts';
import { type FactId, isFactId, type ServiceId } from '../../src/ledger/ids.ts';
import { openSqlite } from '../../src/ledger/stores/sqlite/open.ts';
import { verifyStore } from '../../src/ledger/verify.ts';

const { values } = parseArgs({ options: { kills: { type: 'string', default: '200' } } });
const kills = Number(values.kills);
/** A new file after so many kills: short logs verify fast, and some recoveries build on others. */
const KILLS_A_FILE = 10;

// Inside the project, so that the bundled child finds its packages.
const folder = mkdtempSync(fileURLToPath(new URL('../../node_modules/.kill-', import.meta.url)));
process.exitCode = await run().finally(() => rmSync(folder, { recursive: true, force: true }));

async function run(): Promise<number> {
  const script = join(folder, 'child.mjs');
  writeFileSync(script, await bundle());
  const files = Array.from({ length: Math.ceil(kills / KILLS_A_FILE) }, (_, n) =>
    join(folder, `${n}.ledger`),
  );
  let total = 0;
  const lane = async (): Promise<string | undefined> => {
    for (let file = files.pop(); file !== undefined; file = files.pop()) {
      const { ids, fault } = await torment(script, file);
      total += ids;
      if (fault !== undefined) return fault;
    }
    return undefined;
  };
  const faults = (await Promise.all([lane(), lane()])).filter((fault) => fault !== undefined);
  for (const fault of faults) console.log(fault);
  if (faults.length > 0) {
    console.log(`0 passed, ${faults.length} failed`);
    return 1;
  }
  console.log(
    `${kills} kills, ${total} facts acknowledged, every one is there and every chain verifies`,
  );
  console.log(`${kills} passed, 0 failed`);
  return 0;
}

/** Kills the writer of one file again and again, and looks at the file each time. */
async function torment(script: string, file: string) {
  const acknowledged: FactId[] = [];
  for (let kill = 1; kill <= Math.min(KILLS_A_FILE, kills); kill++) {
    acknowledged.push(...(await appendUntilKilled(script, file)));
    const fault = await faultIn(file, acknowledged);
    if (fault !== undefined)
      return { ids: acknowledged.length, fault: `kill ${kill} of ${file}: ${fault}` };
  }
  return { ids: acknowledged.length, fault: undefined };
}

async function bundle(): Promise<string> {
  const entry = fileURLToPath(new URL('child.ts', import.meta.url));
  const output = (await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      ssr: entry,
      target: 'node20',
      rolldownOptions: { external: ['better-sqlite3'] },
    },
    ssr: { noExternal: /^(?!better-sqlite3)/ },
  })) as Rolldown.RolldownOutput;
  const [chunk] = output.output;
  return chunk.code;
}

/** Ids of every complete line that came before the end. */
async function appendUntilKilled(script: string, file: string): Promise<readonly FactId[]> {
  const child = spawn(process.execPath, [script, file], { stdio: ['ignore', 'pipe', 'inherit'] });
  const lines = collect(child);
  await firstOutput(child);
  await new Promise((resolve) => setTimeout(resolve, Math.random() * 60));
  child.kill('SIGKILL');
  return (await lines).flatMap((line) => line.split(' ').filter(isFactId));
}

function firstOutput(child: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    child.stdout?.once('data', () => resolve());
    child.once('exit', (code) => reject(new Error(`the child ended by itself: ${String(code)}`)));
  });
}

async function collect(child: ChildProcess): Promise<readonly string[]> {
  let text = '';
  child.stdout?.on('data', (chunk: Buffer) => {
    text += chunk.toString();
  });
  await new Promise((resolve) => child.once('close', resolve));
  return text.split('\n').slice(0, -1);
}

async function faultIn(file: string, acknowledged: readonly FactId[]): Promise<string | undefined> {
  const store = openSqlite(file, { service: 'fern-house' as ServiceId, format: 1 });
  try {
    const known = await store.known(acknowledged);
    const lost = acknowledged.filter((id) => !known.has(id));
    if (lost.length > 0)
      return `${lost.length} acknowledged facts are lost, the first ${String(lost[0])}`;
    const verdict = await verifyStore(store, pureHash);
    if (verdict.exit !== 0) return `the ledger does not verify: ${JSON.stringify(verdict)}`;
    const sound = store.db.pragma('integrity_check', { simple: true });
    return sound === 'ok' ? undefined : `the database is not sound: ${String(sound)}`;
  } finally {
    await store.close();
  }
}
