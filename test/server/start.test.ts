import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { request } from 'node:https';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openAccountsDatabase, storing } from '../../src/server/accounts/database.ts';
import { startWords } from '../../src/server/start/faults.ts';
import { readOptions } from '../../src/server/start/options.ts';
import { type Running, serve } from '../../src/server/start/serve.ts';
import { Caller } from './caller.ts';
import { machineFor, optionsFor } from './machine.ts';

let folder: string;
let data: string;
const said: string[] = [];
const running: Running[] = [];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tallyround-start-'));
  data = join(folder, 'data');
  said.length = 0;
});
afterEach(async () => {
  for (const each of running.splice(0)) await each.stop();
  rmSync(folder, { recursive: true });
});

async function start(...args: string[]): Promise<Running> {
  const one = await serve(optionsFor(data, ...args), machineFor(said));
  running.push(one);
  return one;
}
async function stop(): Promise<void> {
  await running.pop()?.stop();
}
/** What whoever starts it is told, when it cannot start. */
async function told(work: Promise<unknown>): Promise<string> {
  const error = await work.then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  return startWords(error) ?? `not told: ${String(error)}`;
}

describe('starting', () => {
  it('makes an invented home in an empty folder, says how to sign in, and keeps it', async () => {
    const { url } = await start();
    expect(said[0]).toContain('This is an invented home.');
    expect(said[0]).toMatch(/Ottoline Brack +manager +402917/);
    expect(said[0]).toContain(url);
    const manager = new Caller(url);
    expect((await manager.signIn('ottoline', '402917')).status).toBe(200);
    const enrolled = await manager.enrol();
    await stop();
    const again = await start();
    expect(said[1]).toMatch(/Ottoline Brack +manager +402917/);
    const listed = new Caller(again.url);
    for (const [name, value] of manager.cookies) listed.cookies.set(name, value);
    listed.key = manager.key;
    const { body } = await listed.call('GET', '/devices');
    expect(body['devices']).toMatchObject([{ id: enrolled.device }]);
    expect((await again.parts.ledger.store.head()).position).toBe(9);
  });

  it('begins afresh when asked, moving what was there aside and saying where', async () => {
    await start();
    await stop();
    writeFileSync(join(data, 'mark'), 'old');
    await start('--fresh');
    const aside = /kept in (.+-before-\S+)/.exec(said[1] ?? '')?.[1] ?? '';
    expect(readFileSync(join(aside, 'mark'), 'utf8')).toBe('old');
    expect(existsSync(join(aside, 'ledger.sqlite'))).toBe(true);
    expect(existsSync(join(data, 'mark'))).toBe(false);
  });

  it('begins a real service with its first manager, who must change the PIN', async () => {
    expect(await told(start('--empty'))).toContain('--manager');
    const options = ['--empty', '--manager', 'Ada Quill', '--title', 'Fernhollow'] as const;
    const { url, parts } = await start(...options);
    expect(parts.accounts.settings).toMatchObject({ title: 'Fernhollow', zone: 'Europe/Dublin' });
    const pin = /first sign-in: (\d{6})/.exec(said[0] ?? '')?.[1] ?? '';
    expect(said[0]).not.toContain('invented');
    const caller = new Caller(url);
    const who = { name: 'Ada Quill' };
    const first = await caller.call('POST', '/sign-in', { body: { who, pin } });
    expect(first.body).toEqual({ reason: 'pin-must-change' });
    const heard = await caller.call('POST', '/sign-in', { body: { who, pin, newPin: '918273' } });
    expect(heard.body).toMatchObject({ role: 'manager' });
    await stop();
    await start('--empty');
    expect(said[1]).not.toContain('first sign-in');
    await stop();
    await start();
    expect(said[2]).not.toContain('invented');
  });

  it('keeps everything for its own user', async () => {
    await start();
    expect(statSync(data).mode & 0o777).toBe(0o700);
    expect(statSync(join(data, 'demo.json')).mode & 0o777).toBe(0o600);
  });
});

describe('a gateway’s port', () => {
  it('says in the log that it has ended what is no gateway, and nothing of what came', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await new Promise((resolve) => other.once('listening', resolve));
    const { port } = other.address() as AddressInfo;
    await new Promise((resolve) => other.close(resolve));
    const log: string[] = [];
    const machine = machineFor(said, { log: { write: (line) => void log.push(line) } });
    running.push(await serve(optionsFor(data, '--mllp-port', String(port)), machine));
    const call = fetch(`http://127.0.0.1:${port}/Finch`, { method: 'POST', body: 'Oriel' });
    await expect(call).rejects.toThrow();
    expect(log.map((line) => JSON.parse(line) as unknown)).toMatchObject([
      { level: 50, gateway: 'not-mllp', msg: 'connection ended' },
    ]);
    expect(log.join('')).not.toMatch(/POST|Finch|Oriel/);
  });
});

describe('what keeps it from starting is told plainly:', () => {
  it('another server in the same folder, and who it is', async () => {
    const { url } = await start();
    const words = await told(start());
    expect(words).toContain('Another Tallyround server already uses this data folder');
    expect(words).toContain(`${url}, process ${process.pid}`);
    expect(await told(start('--fresh'))).toContain('Another Tallyround server');
    expect(readdirSync(folder)).toEqual(['data']);
  });

  it('a port in use; and nothing is left held', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await new Promise((resolve) => other.once('listening', resolve));
    const { port } = other.address() as AddressInfo;
    const words = await told(serve(optionsFor(data, '--port', String(port)), machineFor(said)));
    expect(words).toBe(
      `Something else already listens at 127.0.0.1:${port}. Stop it, or choose another port: npm start -- --port 8300`,
    );
    other.close();
    await start();
  });

  it('an address that is not this machine’s', async () => {
    expect(await told(start('--host', '203.0.113.9'))).toContain('no address 203.0.113.9');
  });

  it('a folder that cannot be written to', async () => {
    writeFileSync(join(folder, 'file'), '');
    const options = optionsFor(join(folder, 'file', 'data'));
    expect(await told(serve(options, machineFor(said)))).toContain('Nothing can be written to');
    expect(await told(serve(optionsFor('/proc/tallyround'), machineFor(said)))).toContain(
      'Nothing can be written to',
    );
  });

  it('a full disk', () => {
    const db = openAccountsDatabase(join(folder, 'accounts.sqlite'));
    db.pragma('max_page_count = 20');
    const fill = () => {
      for (let i = 0; i < 500; i++)
        db.prepare('INSERT INTO event(at, what) VALUES(?, ?)').run('x'.repeat(500), 'signed-in');
    };
    expect(startWords(caught(() => storing(fill)))).toContain('The disk is full');
    db.close();
  });

  it('data of a newer program, in either file; and nothing is changed', async () => {
    await start();
    await stop();
    const bump = (file: string, sql: string) => {
      const db = new Database(join(data, file));
      db.exec(sql);
      db.close();
    };
    bump('ledger.sqlite', 'UPDATE ledger SET format = 99');
    expect(await told(start())).toContain('written by a newer Tallyround');
    bump('ledger.sqlite', 'UPDATE ledger SET format = 1');
    const accounts = new Database(join(data, 'accounts.sqlite'));
    const version = Number(accounts.pragma('user_version', { simple: true }));
    accounts.close();
    bump('accounts.sqlite', 'PRAGMA user_version = 99');
    expect(await told(start())).toContain('written by a newer Tallyround');
    bump('accounts.sqlite', `PRAGMA user_version = ${version}`);
    await start();
  });

  it('files that are damaged, or do not belong together', async () => {
    await start();
    await stop();
    rmSync(join(data, 'accounts.sqlite'));
    expect(await told(start())).toContain('do not belong together');
    rmSync(data, { recursive: true });
    mkdirSync(data);
    writeFileSync(join(data, 'accounts.sqlite'), 'no database'.repeat(1000));
    expect(await told(start())).toContain('The data cannot be read');
  });

  it('a zone that there is not', async () => {
    expect(await told(start('--zone', 'Europe/Aldermere'))).toContain('no time zone');
  });
});

describe('options', () => {
  it('come from the command line before the environment', () => {
    const env = { TALLYROUND_PORT: '9001', TALLYROUND_HOST: '::1', TALLYROUND_DATA: 'kept' };
    const read = readOptions([], env, '/home/x');
    expect(read).toMatchObject({ options: { port: 9001, host: '::1', data: '/home/x/kept' } });
    const line = ['--port', '9002', '--proxy', '10.0.0.1, 10.0.0.2', '--name', 'Home.Example'];
    expect(readOptions(line, env, '/')).toMatchObject({
      options: {
        port: 9002,
        guidePort: 9003,
        proxies: ['10.0.0.1', '10.0.0.2'],
        names: ['home.example'],
      },
    });
    expect(readOptions([], {}, '/')).toMatchObject({ options: { host: '127.0.0.1', port: 8240 } });
  });

  it('that make no sense are named', () => {
    for (const args of [
      ['--port', 'x'],
      ['--port', '70000'],
      ['--log', 'loud'],
      ['--nonsense'],
      ['word'],
    ])
      expect(readOptions(args, {}, '/')).toMatchObject({ ok: false });
    expect(readOptions(['--port', 'x'], {}, '/')).toMatchObject({
      message: '--port x: a port is a number from 0 to 65535.',
    });
  });

  it('that open the server to others in clear draw a warning', async () => {
    await start('--host', '0.0.0.0');
    expect(said[0]).toContain('without encryption');
    await stop();
    await start('--host', '0.0.0.0', '--proxy', '10.0.0.1');
    expect(said[1]).not.toContain('without encryption');
  });
});

describe('in the home’s network', () => {
  it('serves TLS that a tablet which trusts the home takes, and a plain page that leads there', async () => {
    const { url, guideUrl = '' } = await start('--home-network', '--host', '127.0.0.1');
    expect(url).toMatch(/^https:\/\/127\.0\.0\.1:\d+$/);
    const ca = readFileSync(join(data, 'tls', 'authority.pem'));
    const answer = await new Promise<{ status: number; hsts: unknown }>((resolve, reject) => {
      request(`${url}/healthz`, { ca }, (heard) => {
        heard.resume();
        const hsts = heard.headers['strict-transport-security'];
        resolve({ status: heard.statusCode ?? 0, hsts });
      })
        .on('error', reject)
        .end();
    });
    expect(answer).toEqual({ status: 200, hsts: 'max-age=31536000' });
    await expect(fetch(`${url}/healthz`)).rejects.toThrow();
    const page = await (await fetch(guideUrl)).text();
    expect(page).toContain(url);
    const shown = /([0-9A-F]{2}:){15}[0-9A-F]{2}/.exec(said[0] ?? '')?.[0] ?? 'none';
    expect(page.replace(/<[^>]+>/g, '')).toContain(shown.split(':').slice(0, 4).join(' '));
  });
});

function caught(work: () => unknown): unknown {
  try {
    work();
    return undefined;
  } catch (error) {
    return error;
  }
}
