import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { Trial } from '../../test/trial/home.ts';
import { kitCode, plan, swab } from '../../test/trial/round.ts';
import { catalogue } from '../care/catalogue.ts';
import { filing } from '../care/home.ts';
import { findings } from '../care/quality/findings.ts';
import type { LedgerFact } from '../ledger/fact.ts';
import { HOME_FOLD, homeFold, readStored } from './home-fold.ts';

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
  it('of these weeks comes back from a snapshot as the same home', () => {
    const { home } = lived();
    const fold = homeFold(home.service);
    const again = fold.first.decode(fold.first.encode(home));
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

describe('a fact that was read before', () => {
  it('is not looked at again, but for its kind, its version and its private part', () => {
    const wrong = stored({ data: { person: 7 } });
    expect(readStored(wrong, true).ok).toBe(true);
    expect(readStored(stored({}), true)).toEqual(readStored(stored({})));
    expect(readStored(stored({ kind: 'kit.juggled' }), true).ok).toBe(false);
    expect(readStored(stored({ v: 2 }), true).ok).toBe(false);
    const hidden = { kind: 'unit.described', data: { unit: 'east' }, private: { value: 7 } };
    const read = readStored(stored(hidden), true);
    expect(read.ok && 'private' in read.fact).toBe(false);
  });

  it('was read by the catalogue of today: a new one has a new number of the fold', () => {
    // Everything that decides whether a fact is read: its fields, their types, patterns and bounds.
    const print = createHash('sha256').update(shapeOf(catalogue)).digest('base64url');
    expect({ fold: HOME_FOLD, print }, 'raise HOME_FOLD, and note the new print here').toEqual({
      fold: 6,
      print: 'DF3Fbh6wNgIyhzP308qnEzHwHR5p-UIssIZd4yZq3h4',
    });
  });
});

/** The schemas as text: every property of them, and what a check of our own asks, by its source. */
const shapeOf = (value: unknown): string =>
  JSON.stringify(value, (key, one: unknown) => {
    if (key === 'files' || key === '~standard') return undefined;
    if (typeof one === 'function')
      return key === 'requirement' ? String(one).replaceAll(/\s+/g, '') : one.name;
    return one instanceof RegExp ? String(one) : one;
  });

describe('the first look', () => {
  it('has everybody and what happened lately', () => {
    const trial = lived();
    const old = [...trial.home.known.keys()];
    trial.at('09:00', '2026-06-03');
    const tamsin = trial.person('Tamsin Oake', '1941-06-02');
    swab(trial, plan(trial, [tamsin]), tamsin, kitCode(4));
    const fold = homeFold(trial.home.service);
    const first = fold.first.decode(fold.first.encode(trial.home));
    const kinds = (of: typeof first, among: readonly string[]) =>
      [...of.known.values()].filter(({ id }) => among.includes(id)).map(({ kind }) => kind);
    expect(kinds(first, old)).toContain('person.described');
    expect(kinds(first, old)).toContain('consent.decided');
    expect(kinds(first, old)).not.toContain('turn.opened');
    expect(kinds(first, old)).not.toContain('swab.taken');
    const lately = [...trial.home.known.keys()].filter((id) => !old.includes(id));
    expect(kinds(first, lately)).toHaveLength(lately.length);
  });

  it('takes for over only what is about a round, a turn, a test, a box, or a decision on one', () => {
    const { over } = homeFold(lived().home.service).first;
    const passing = ['round', 'turn', 'test', 'box', 'reference', 'finding'];
    const ids = new Proxy(
      {},
      { get: (_, key) => (key === 'codes' || key === 'people' ? [] : 'x') },
    );
    for (const kind of Object.keys(catalogue) as (keyof typeof catalogue)[]) {
      const shelves = filing({ kind, data: ids } as never).map(([shelf]) => shelf);
      expect([kind, over.has(kind)]).toEqual([
        kind,
        shelves.some((shelf) => passing.includes(shelf)),
      ]);
    }
  });

  it('is there for a home with no facts', () => {
    const fold = homeFold(lived().home.service);
    expect(fold.first.encode(fold.initial())).toBe('[]');
  });
});
