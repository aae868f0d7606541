import { describe, expect, it } from 'vitest';
import { asSenior, house, sendAll } from '../../test/trial/house.ts';
import { kitCode, pack, swab } from '../../test/trial/round.ts';
import type { StaffId } from '../care/ids.ts';
import { findings } from '../care/quality/findings.ts';
import { heldBy, isWithdrawn } from '../care/quality/held.ts';
import { registrationOf } from '../care/results/outcome.ts';
import { registerList } from '../care/results/registering.ts';
import { roundOf } from '../care/rounds/round.ts';
import type { Day } from '../care/time.ts';
import { after, HOUR } from '../care/time.ts';
import { register, registrationFailed } from './register.ts';
import { readPairs, registerPairs } from './register-list.ts';
import { settleFinding } from './settle-finding.ts';

const reference = (all: ReturnType<typeof house>, test: string) =>
  registrationOf(all.trial.home, test as never).registered?.data.reference;

describe('registering one by one', () => {
  it('goes in the order in which the bags went into the box', () => {
    const all = house();
    const { trial, round, people } = all;
    const tests = people.map((person, at) => swab(trial, round, person, kitCode(at + 1)));
    for (const at of [3, 1, 2]) trial.must(pack(trial, round, kitCode(at)));
    const found = roundOf(trial.home, round)!;
    expect(registerList(trial.home, found).map(({ test }) => test.id)).toEqual(
      [2, 0, 1].map((at) => tests[at]),
    );
  });

  it('refuses a reference that another test has, and a kit code given for a reference', () => {
    const all = house();
    const { trial } = all;
    const [oriel, tamsin] = sendAll(all);
    trial.must(register(trial.home, { test: oriel!, reference: 'R-100' }, trial.doing));
    expect(
      trial.refused(register(trial.home, { test: tamsin!, reference: 'R-100' }, trial.doing)),
    ).toMatchObject({ reason: 'reference-used', test: oriel });
    expect(
      trial.refused(register(trial.home, { test: tamsin!, reference: kitCode(3) }, trial.doing))
        .reason,
    ).toBe('reference-is-code');
  });

  it('given the site is down, then why, who tries again and when are kept; a time that is over is refused', () => {
    const all = house();
    const { trial } = all;
    const [test] = sendAll(all);
    const failed = { test: test!, why: 'site-down', who: 'pia' as StaffId } as const;
    const nextTry = after(trial.now, HOUR);
    expect(
      trial.refused(registrationFailed(trial.home, { ...failed, nextTry: trial.now }, trial.doing))
        .reason,
    ).toBe('in-the-past');
    trial.must(registrationFailed(trial.home, { ...failed, nextTry }, trial.doing));
    trial.must(registrationFailed(trial.home, { ...failed, nextTry }, trial.doing));
    expect(registrationOf(trial.home, test!).failures).toHaveLength(1);
  });
});

describe('one reference on two tests', () => {
  function clash() {
    const all = house();
    const [oriel, tamsin] = sendAll(all);
    for (const test of [oriel!, tamsin!])
      all.trial.add('test.registered', { test, reference: 'R-1', on: '2026-03-03' as Day });
    return { all, trial: all.trial, oriel: oriel!, tamsin: tamsin! };
  }

  it('given it is amended, then the clash is gone: that need not wait for a senior', () => {
    const { all, trial, oriel, tamsin } = clash();
    expect(heldBy(trial.home, oriel)).toHaveLength(1);
    trial.must(register(trial.home, { test: tamsin, reference: 'R-2', amend: true }, trial.doing));
    expect(heldBy(trial.home, oriel)).toEqual([]);
    expect(reference(all, tamsin)).toBe('R-2');
  });

  it('given a senior says whose it is, then the other is registered again, and its tube is still good', () => {
    const { all, trial, oriel, tamsin } = clash();
    asSenior(trial);
    const found = findings(trial.home).find(({ kind }) => kind === 'reference-on-two')!;
    const keeps = registrationOf(trial.home, oriel).registered!.id;
    const settle = {
      ...{ finding: found.id, seen: found.members, reason: 'Rang them.' },
      verdict: 'one-stands',
    } as const;
    expect(trial.refused(settleFinding(trial.home, settle, trial.doing)).reason).toBe(
      'keeps-missing',
    );
    trial.must(settleFinding(trial.home, { ...settle, keeps }, trial.doing));
    expect(reference(all, oriel)).toBe('R-1');
    expect(reference(all, tamsin)).toBeUndefined();
    expect(isWithdrawn(trial.home, tamsin)).toBe(false);
    trial.must(register(trial.home, { test: tamsin, reference: 'R-2' }, trial.doing));
    expect(reference(all, tamsin)).toBe('R-2');
  });

  it('two references for one test: the one that a senior picked counts', () => {
    const all = house();
    const { trial } = all;
    const [test] = sendAll(all);
    for (const given of ['R-1', 'R-2'])
      trial.add('test.registered', { test: test!, reference: given, on: '2026-03-03' as Day });
    asSenior(trial);
    const found = findings(trial.home).find(({ kind }) => kind === 'registered-twice')!;
    const first = [...trial.home.known.values()].find(
      (fact) => fact.kind === 'test.registered' && fact.data.reference === 'R-1',
    )!;
    trial.must(
      settleFinding(
        trial.home,
        {
          ...{ finding: found.id, seen: found.members, reason: 'Looked it up.' },
          ...{ verdict: 'one-stands', keeps: first.id },
        },
        trial.doing,
      ),
    );
    expect(reference(all, test!)).toBe('R-1');
  });
});

describe('a list that came back', () => {
  it('each line is read by itself, in either order; what is wrong is told by line, and only the rest is kept', () => {
    const all = house(['Oriel Finch', 'Tamsin Oake', 'Bram Hollow', 'Ismay Thorn']);
    const { trial } = all;
    const [oriel, tamsin, bram] = sendAll(all);
    trial.must(register(trial.home, { test: bram!, reference: 'R-9' }, trial.doing));
    const lines = readPairs(
      trial.home,
      [
        `${kitCode(1)},R-1`,
        '',
        `R-2\t${kitCode(2)}`,
        `${kitCode(3)} R-3`,
        `${kitCode(77)};R-4`,
        'what is this line',
        `${kitCode(4)} R-9`,
      ].join('\r\n'),
      trial.doing,
    );
    expect(lines.map(({ line, found }) => [line, found.ok || found.why])).toEqual([
      [1, true],
      [3, true],
      [4, 'refused'],
      [5, 'refused'],
      [6, 'not-a-pair'],
      [7, 'refused'],
    ]);
    expect(trial.must(registerPairs(trial.home, lines, trial.doing))).toHaveLength(2);
    expect([reference(all, oriel!), reference(all, tamsin!)]).toEqual(['R-1', 'R-2']);
  });

  it('two lines that give one reference, or one test, are both left: neither is guessed at', () => {
    const all = house();
    const { trial } = all;
    sendAll(all);
    const read = (text: string) =>
      readPairs(trial.home, text, trial.doing).map(({ found }) => found.ok || found.why);
    expect(read(`${kitCode(1)} R-1\n${kitCode(2)} R-1\n${kitCode(3)} R-3`)).toEqual([
      'twice',
      'twice',
      true,
    ]);
    expect(read(`${kitCode(1)} R-1\n${kitCode(1)} R-2`)).toEqual(['twice', 'twice']);
  });
});
