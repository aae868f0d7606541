import { describe, expect, it } from 'vitest';
import { Trial } from '../../test/trial/home.ts';
import { kitCode, plan, swab } from '../../test/trial/round.ts';
import { findings } from '../care/quality/findings.ts';
import type { LedgerFact } from '../ledger/fact.ts';
import { homeFold, NOW_PART, readStored } from './home-fold.ts';

function lived() {
  const trial = new Trial();
  trial.staff('Pia');
  trial.staff('Jonah');
  const corwen = trial.person('Corwen Vale', '1951-03-03');
  swab(trial, plan(trial, [corwen]), corwen, kitCode(3));
  return trial;
}

const stored = (change: object): LedgerFact =>
  ({
    ...{ id: 'x'.repeat(43), kind: 'person.came', v: 1, at: '2026-03-03T09:00:00.000Z', off: 0 },
    ...{ by: 'jonah', with: [], device: 'T0000001', seq: 1, prev: 'A', seen: 'A', size: 1 },
    data: { person: 'corwen', on: '2026-03-03', from: 'leave' },
    ...change,
  }) as unknown as LedgerFact;

describe('the home as a fold', () => {
  it('comes back from a snapshot as the same home', () => {
    const { home } = lived();
    const fold = homeFold(home.service);
    const again = fold.decode(fold.encode(home));
    expect(fold.digest(again)).toBe(fold.digest(home));
    expect(findings(again)).toEqual(findings(home));
  });

  it('gives one digest for any order of the same facts', () => {
    const { home, facts } = lived();
    const fold = homeFold(home.service);
    const backwards = facts.toReversed().reduce(fold.evolve, fold.initial());
    expect(fold.digest(backwards)).toBe(fold.digest(home));
  });

  it('reads what it knows, and says why it does not read the rest', () => {
    expect(readStored(stored({})).ok).toBe(true);
    expect(readStored(stored({ kind: 'kit.juggled' }))).toEqual({
      ok: false,
      reason: 'unknown-kind',
    });
    expect(readStored(stored({ v: 2 }))).toEqual({ ok: false, reason: 'newer-version' });
    expect(readStored(stored({ data: { person: 7 } }))).toEqual({ ok: false, reason: 'bad-data' });
  });

  it('leaves out a private part that makes no sense, and keeps the fact', () => {
    const read = readStored(
      stored({ kind: 'unit.described', data: { unit: 'east' }, private: { value: 7 } }),
    );
    expect(read.ok && read.fact.private).toBe(undefined);
  });
});

describe('the first part of a snapshot', () => {
  it('has everybody and what happened lately, and the whole has each fact once', () => {
    const trial = lived();
    const old = [...trial.home.known.keys()];
    trial.at('09:00', '2026-06-03');
    const tamsin = trial.person('Tamsin Oake', '1941-06-02');
    swab(trial, plan(trial, [tamsin]), tamsin, kitCode(4));
    const fold = homeFold(trial.home.service);
    const parts = fold.encode(trial.home);
    const first = fold.decode({ [NOW_PART]: parts[NOW_PART] ?? '' });
    const kinds = (of: typeof first, among: readonly string[]) =>
      [...of.known.values()].filter(({ id }) => among.includes(id)).map(({ kind }) => kind);
    expect(kinds(first, old)).toContain('person.described');
    expect(kinds(first, old)).toContain('consent.decided');
    expect(kinds(first, old)).not.toContain('turn.opened');
    expect(kinds(first, old)).not.toContain('swab.taken');
    const lately = [...trial.home.known.keys()].filter((id) => !old.includes(id));
    expect(kinds(first, lately)).toHaveLength(lately.length);
    expect(fold.digest(fold.decode(parts))).toBe(fold.digest(trial.home));
  });

  it('is there for a home with no facts', () => {
    const fold = homeFold(lived().home.service);
    expect(fold.encode(fold.initial())).toEqual({ [NOW_PART]: '[]' });
  });
});
