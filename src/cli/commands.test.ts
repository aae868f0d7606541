import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import * as v from 'valibot';
import { afterAll, describe, expect, it } from 'vitest';
import { drawInput } from '../../test/trial/plan-instance.ts';
import { COMMANDS } from './commands.ts';
import { schemaFiles, statisticModules } from './schemas.ts';

const tallyround = (args: readonly string[], input = '') =>
  spawnSync(process.execPath, ['bin/tallyround.mjs', ...args], { encoding: 'utf8', input });
const modules = await statisticModules();

/** The shell line printed after "Example:" in a command's help. */
const exampleIn = (help: string): string => /^ {2}(echo .*)$/m.exec(help)?.[1] ?? '';

describe.each(modules.map((m) => [m.definition.name, m.definition] as const))(
  'tallyround %s',
  (name, definition) => {
    it('shows an example in its help that runs as printed', { timeout: 30_000 }, () => {
      const help = tallyround([name, '--help']);
      expect(help.status).toBe(0);
      const line = exampleIn(help.stdout).replace(
        '| tallyround',
        `| ${process.execPath} bin/tallyround.mjs`,
      );
      expect(line).toContain(name);
      const run = spawnSync('bash', ['-c', line], { encoding: 'utf8' });
      expect(run.stderr).toBe('');
      expect(run.status).toBe(0);
      expect(v.safeParse(definition.output, JSON.parse(run.stdout)).success).toBe(true);
    });

    it('gives no figure that is not a number', () => {
      const parsed = v.parse(definition.input, definition.example);
      const outcome = definition.run(parsed);
      expect(outcome.ok).toBe(true);
      expect(JSON.stringify(outcome)).not.toMatch(/NaN|Infinity/);
    });
  },
);

describe('tallyround', () => {
  const folder = mkdtempSync(join(tmpdir(), 'tallyround-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  const file = (name: string, content: string): string => {
    const path = join(folder, name);
    writeFileSync(path, content);
    return path;
  };

  it('lists every command', () => {
    const help = tallyround(['--help']).stdout;
    for (const name of Object.keys(COMMANDS)) expect(help).toContain(name);
  });

  it('says where in the input a fault lies, and keeps to exit code 2', () => {
    const run = tallyround(
      ['turnaround'],
      '{"hours":[3,-1],"outcome":["result","lost"],"by":"soon"}',
    );
    expect(run.status).toBe(2);
    expect(run.stdout).toBe('');
    expect(run.stderr).toContain('/hours/1: must be 0 or more');
    expect(run.stderr).toContain('/outcome/1: must be "result", "void" or "out"');
    expect(run.stderr).toContain('/by: ');
  });

  it('passes on what the statistics refuse, in words', () => {
    const run = tallyround(
      ['interpret'],
      '{"pre":0,"tests":[{"sensitivity":0.7,"specificity":1,"result":"positive"}]}',
    );
    expect(run.status).toBe(2);
    expect(run.stderr).toContain('impossible result');
  });

  it('explains input that is not JSON and files that are not there', () => {
    expect(tallyround(['voids'], 'void').stderr).toContain('is not JSON, at line 1, column 1');
    expect(tallyround(['voids'], '{\n  "voids": [0, 1,]\n}').stderr).toContain(
      'is not JSON, at line 2, column 18',
    );
    expect(tallyround(['voids', join(folder, 'absent.json')]).stderr).toContain('cannot read');
  });

  it('reads a JSON file, a CSV file and CSV from standard input alike', () => {
    const json = file('voids.json', '{"voids":[0,0,1,0,1],"usual":0.05}');
    const csv = 'void\n0\n0\n1\n0\n1\n';
    const first = tallyround(['voids', json]);
    expect(first.status).toBe(0);
    expect(tallyround(['voids', file('voids.csv', csv), '--with', '{"usual":0.05}']).stdout).toBe(
      first.stdout,
    );
    expect(tallyround(['voids', '--csv', '--with', '{"usual":0.05}'], csv).stdout).toBe(
      first.stdout,
    );
  });

  it('names the column of a CSV that is missing or not a number', () => {
    expect(tallyround(['voids', '--csv'], 'kind\n1\n').stderr).toContain('no column void');
    expect(tallyround(['voids', '--csv'], 'void\nyes\n').stderr).toContain(
      'line 2: "yes" in column void is not a number',
    );
    expect(tallyround(['voids', '--csv'], 'void\n0\n\n1\n\n').stderr).not.toContain('line');
    expect(tallyround(['voids', '--csv'], 'void\n0\n\nno\n').stderr).toContain('line 4: "no"');
    const ragged = tallyround(['clear', '--csv'], 'id,prior,sensitivity\nA,0.1,0.8\nB,0.2\n');
    expect(ragged.stderr).toContain('on line 3');
  });

  it('takes an empty sensitivity as no valid test', () => {
    const run = tallyround(['clear', '--csv'], 'id,prior,sensitivity\nA,0.1,0.8\nB,0.2,\n');
    expect(
      (JSON.parse(run.stdout) as { people: readonly { chance: number }[] }).people[1]?.chance,
    ).toBe(0.2);
  });

  it('refuses a command it does not know', () => {
    expect(tallyround(['guess']).status).not.toBe(0);
  });
});

describe('docs/schemas', () => {
  it('describes every input and output as the commands have them now', async () => {
    const files = await schemaFiles();
    expect(readdirSync('docs/schemas').sort()).toEqual(
      expect.arrayContaining([...files.keys()].sort()),
    );
    for (const [name, text] of files)
      expect(
        readFileSync(`docs/schemas/${name}`, 'utf8'),
        `${name}: run npx tsx scripts/make-schemas.ts`,
      ).toBe(text);
  });

  const validator = (name: string) => {
    const ajv = new Ajv2020({ strict: false });
    return ajv.compile(JSON.parse(readFileSync(`docs/schemas/${name}.json`, 'utf8')) as object);
  };

  it.each(modules.map(({ definition }) => [definition.name, definition] as const))(
    'holds for what %s reads and writes, by a validator of others',
    (name, definition) => {
      const reads = validator(`${name}.input`);
      expect(reads(definition.example), JSON.stringify(reads.errors)).toBe(true);
      expect(reads('not this')).toBe(false);
      const outcome = definition.run(v.parse(definition.input, definition.example));
      if (!outcome.ok) throw new Error(outcome.detail);
      const writes = validator(`${name}.output`);
      const answer: unknown = JSON.parse(JSON.stringify(outcome.value));
      expect(writes(answer), JSON.stringify(writes.errors)).toBe(true);
      expect(writes({})).toBe(false);
    },
  );

  it('holds for rounds of every size and tightness, and refuses what the planner refuses by itself', () => {
    const reads = validator('plan.input');
    for (let seed = 0; seed < 200; seed++) {
      const round = drawInput(seed, { people: 1 + (seed % 30), staff: 5, pairs: 2, tight: true });
      expect(reads(round), JSON.stringify(reads.errors)).toBe(true);
    }
    const round = drawInput(1, { people: 3, staff: 3, pairs: 1 });
    for (const wrong of [
      { ...round, from: '-7:30' },
      { ...round, people: [] },
      {
        ...round,
        people: Array.from({ length: 500 }, (_, i) => ({ ...round.people[0], id: `P${i}` })),
      },
      { ...round, rules: { ...round.rules, pairs: 1e30 } },
      { ...round, staff: 'all' },
    ])
      expect(reads(wrong), JSON.stringify(wrong).slice(0, 90)).toBe(false);
  });

  it.each([
    ['NaN for a length', '8.5', 'NaN', 'is not JSON'],
    ['more than any number', '8.5', '1e999', '/people/0/minutes/mean: must be 240 or less'],
    ['a length below 0', '8.5', '-3', '/people/0/minutes/mean: must be above 0'],
    ['a text for a number', '8.5', '"8"', '/people/0/minutes/mean: '],
    ['one id for two', '"P2"', '"P1"', '/people/1: "P1" is there twice'],
    ['staff whom nobody knows', '"excluded":[]', '"excluded":["Zed"]', '/people/0/excluded/0: '],
  ])('plan: %s has its place named, and exit code 2', (_, from, to, says) => {
    const people = ['P1', 'P2'].map((id) => ({ id, excluded: [], minutes: { mean: 8.5 } }));
    const round = JSON.stringify({ ...drawInput(1, { people: 2, staff: 3, pairs: 1 }), people });
    const run = tallyround(['plan'], round.replace(from, to));
    expect(run.stderr).toContain(says);
    expect(run.stdout).toBe('');
    expect(run.status).toBe(2);
  });
});
