import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PersonId, StaffId } from '../../care/ids.ts';
import type { Day, Instant } from '../../care/time.ts';
import { withService } from '../../server/operations/existing.ts';
import { keepAsArrived, pen, serverDesk } from '../../server/service/write-facts.ts';
import { UPKEEP } from '../commands.ts';
import { world } from './main.ts';

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

  it('erases what is private about whoever has gone: listed, shown, then done', TIME, async () => {
    const home = join(folder, 'gone');
    const args = ['--data', home, '--title', 'Fernhollow', '--manager', 'Ada Quill'];
    expect(tallyround(['begin', ...args]).status).toBe(0);
    await withService(home, world, async ({ ledger, random }) => {
      const at = '2026-01-05T09:00:00.000Z' as Instant;
      const [person, by] = ['person00' as PersonId, 'ada' as StaffId];
      const facts = [
        {
          kind: 'person.described',
          data: { person, about: 'name' },
          private: { value: 'Odo Marsh' },
        },
        { kind: 'person.went', data: { person, on: '2026-01-05' as Day, to: 'moved' } },
      ] as const;
      const dated = facts.map((fact) => ({ ...fact, at, by }));
      await keepAsArrived(ledger, pen(dated, await serverDesk(ledger, random)));
    });
    const erase = (more: readonly string[] = [], input = '') =>
      tallyround(['erase', '--data', home, ...more], input);
    expect(erase().stdout).toBe('person     person00  gone since 2026-01-05  private parts: 1\n');
    const decided = ['--reason', 'retention', '--manager', 'Ada Quill'];
    // The name comes on stdin, so that no list of processes and no shell keeps it.
    const shown = erase(['--person', '-', ...decided], 'Odo Marsh\n');
    expect([shown.status, shown.stderr]).toEqual([0, '']);
    expect(shown.stdout).toContain('     1  person.described');
    expect(shown.stdout).toContain('Nothing was erased.');
    expect(shown.stdout).toContain('Does your policy still want it kept?');
    expect(shown.stdout).not.toContain('Odo');
    const holds = () => readFileSync(join(home, 'ledger.sqlite'), 'latin1').includes('Odo Marsh');
    expect(holds()).toBe(true);

    for (const [more, says] of [
      [['--person', 'person00'], '--reason'],
      [['--person', 'person00', '--facts', '-', ...decided], 'Give one of'],
      [['--person', 'Nobody Here', ...decided], 'Nobody Here'],
      [['--person', 'person00', '--reason', 'tidy', '--manager', 'Ada Quill'], 'retention'],
      [['--person', 'person00', '--reason', 'retention', '--manager', 'Odo Marsh'], 'Odo Marsh'],
      [['--colleague', 'Ada Quill', ...decided, '--for-good'], 'still here'],
      [['--facts', 'no-such-file', ...decided, '--for-good'], 'no-such-file'],
    ] as const) {
      const run = erase(more);
      expect([more, run.status === 0, run.stdout]).toEqual([more, false, '']);
      expect(run.stderr).toContain(says);
    }
    expect(erase(['--facts', '-', ...decided, '--for-good'], 'no-id\n').stderr).toContain('no-id');
    expect(holds()).toBe(true);

    const done = erase(['--person', 'person00', ...decided, '--for-good']);
    expect([done.status, done.stderr]).toEqual([0, '']);
    expect(done.stdout).toContain('Erased for good:');
    expect(holds()).toBe(false);
    expect(tallyround(['verify', '--data', home]).status).toBe(0);
    expect(erase().stdout).toContain('Nobody who has gone');
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
