import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { UPKEEP } from '../commands.ts';

const bin = resolve('bin/tallyround.mjs');
const folder = mkdtempSync(join(tmpdir(), 'tallyround-upkeep-'));
afterAll(() => rmSync(folder, { recursive: true }));
const TIME = { timeout: 120_000 };

const tallyround = (args: readonly string[], input = '') =>
  spawnSync(process.execPath, [bin, ...args], { cwd: folder, encoding: 'utf8', input });

/** The shell line printed after "Example:" in a command's help, run as printed. */
function example(name: string) {
  const { stdout } = tallyround([name, '--help']);
  const line = /^ {2}(tallyround .*)$/m.exec(stdout)?.[1] ?? '';
  expect(line).toContain(`tallyround ${name}`);
  const command = line.replace('tallyround', `${process.execPath} ${bin}`);
  return spawnSync('bash', ['-c', command], { cwd: folder, encoding: 'utf8' });
}

beforeAll(() => {
  writeFileSync(join(folder, 'passphrase.txt'), 'moss lantern kettle 41\n');
});

describe('upkeep from the command line', () => {
  it('each example of the help runs, in the order in which a service meets them', TIME, () => {
    for (const name of Object.keys(UPKEEP)) {
      const run = example(name);
      expect([name, run.stderr, run.status]).toEqual([name, '', 0]);
    }
    const chain = (data: string) =>
      /Chain value: (.*)/.exec(tallyround(['verify', '--data', data]).stdout)?.[1];
    expect(chain('restored')).toBe(chain('data'));
    expect(readFileSync(join(folder, 'facts.jsonl'), 'utf8')).not.toContain('Maren Holt');
    expect(readFileSync(join(folder, 'home.age'), 'latin1')).not.toContain('Maren Holt');
    expect(statSync(join(folder, 'home.age')).mode & 0o077).toBe(0);
  });

  it('says what is wrong and changes nothing', TIME, () => {
    const refused = (args: readonly string[], input = '') => {
      const { status, stderr } = tallyround(args, input);
      expect(status).toBe(2);
      return stderr;
    };
    const passphrase = ['--passphrase-file', '-'];
    expect(refused(['verify', '--data', 'nowhere'])).toContain('nowhere');
    expect(refused(['backup', 'home.age', '--data', 'data', ...passphrase])).toContain('already');
    expect(refused(['backup', 'b.age', '--data', 'data', ...passphrase], 'short\n')).toContain(
      '12',
    );
    expect(refused(['backup', 'b.age', '--data', 'data'])).toContain('--passphrase-file');
    expect(
      refused(['restore', 'home.age', '--data', 'other', ...passphrase], 'not the one it was\n'),
    ).toContain('does not open');
    expect(
      refused(['restore', 'facts.jsonl', '--data', 'other', ...passphrase], 'anything\n'),
    ).toContain('not a backup');
    expect(
      refused(['restore', 'home.age', '--data', 'data', ...passphrase], 'moss lantern kettle 41\n'),
    ).toContain('Nothing was put back');
    expect(refused(['reset-pin', 'Nobody Here', '--data', 'data'])).toContain('Nobody Here');
    expect(refused(['tablets', '--retire', 'T9', '--data', 'data'])).toContain('T9');
    expect(
      refused(['begin', '--data', 'data', '--title', 'A', '--manager', 'B', '--zone', 'Mars/One']),
    ).toContain('Mars/One');
  });
});
