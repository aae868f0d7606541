import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LedgerFact } from '../fact.ts';
import { pureHash } from '../hash.ts';
import { type ChainValue, type DeviceId, type FactId, instantOf, NO_FACT } from '../ids.ts';
import { CLOCK_TOLERANCE_MS, conclude, concluder } from './conclude.ts';
import { cut, digest, evolve, initial } from './envelopes.ts';

const noon = Date.parse('2026-11-25T12:00:00.000Z');
const minute = 60_000;
const idOf = (name: string) => pureHash(name) as FactId;
const chainOf = (position: number) => pureHash(`chain ${position}`) as ChainValue;

interface Sketch {
  readonly name: string;
  readonly device?: string;
  readonly seq: number;
  readonly prev?: string;
  /** Minutes after noon. */
  readonly at?: number;
  readonly sees?: number;
  /** Position and minute of arrival. */
  readonly got?: readonly [number, number];
  readonly via?: string;
}

function fact({
  name,
  device = 'T0000001',
  seq,
  prev,
  at = 0,
  sees,
  got,
  via,
}: Sketch): LedgerFact {
  const envelope = {
    id: idOf(name),
    kind: 'note',
    v: 1,
    data: {},
    at: instantOf(noon + at * minute)!,
    off: 0,
    by: 'ann' as LedgerFact['by'],
    with: [],
    device: device as DeviceId,
    seq,
    prev: prev === undefined ? NO_FACT : idOf(prev),
    seen: sees === undefined ? (NO_FACT as string as ChainValue) : chainOf(sees),
    size: 1,
  };
  if (!got) return envelope;
  const arrived = instantOf(noon + got[1] * minute)!;
  const delivered = (via ?? device) as DeviceId;
  return {
    ...envelope,
    position: got[0],
    arrived,
    via: delivered,
    skew: 0,
    chain: chainOf(got[0]),
  };
}

const stateOf = (sketches: readonly Sketch[]) => sketches.map(fact).reduce(evolve, initial());
const found = (...sketches: Sketch[]) =>
  conclude(stateOf(sketches)).map(({ id, members }) => [id, members.length]);
const a = { name: 'a', seq: 1, got: [1, 0] } as const;
const b = { name: 'b', seq: 2, prev: 'a', got: [2, 1], at: 1 } as const;

describe('what envelopes show', () => {
  test('a sound chain shows nothing', () => {
    expect(found(a, b, { name: 'c', seq: 3, prev: 'b', at: 500 })).toEqual([]);
  });

  test('two facts with one previous fact are a fork, at its place, with both as members', () => {
    expect(found(a, b, { ...b, name: 'b2', got: [3, 1] })).toEqual([['fork:T0000001/2', 2]]);
  });

  test('the branches behind a fork are not forks again', () => {
    const tail = [
      { name: 'c', seq: 3, prev: 'b', at: 1 },
      { name: 'c2', seq: 3, prev: 'b2', at: 1 },
    ];
    expect(found(a, b, { ...b, name: 'b2' }, ...tail)).toEqual([['fork:T0000001/2', 2]]);
  });

  test('missing numbers are a gap from the first missing one, and what follows is an orphan', () => {
    expect(found(a, { name: 'd', seq: 5, prev: 'c' })).toEqual([
      ['gap:T0000001/2', 1],
      [`orphan:${idOf('d')}`, 1],
    ]);
  });

  test('a fact of a lost branch is an orphan though its number follows', () => {
    expect(found(a, b, { name: 'c2', seq: 3, prev: 'b2', at: 1 })).toEqual([
      [`orphan:${idOf('c2')}`, 1],
    ]);
  });

  test('facts that another device delivered are carried, a run of them as one', () => {
    const via = 'T0000002';
    const facts = [
      a,
      { ...b, via },
      { name: 'c', seq: 3, prev: 'b', got: [3, 1], at: 1, via } as const,
    ];
    expect(found(...facts)).toEqual([['carried:T0000001/2', 2]]);
  });

  test('a number far beyond any other costs no memory and is a gap', () => {
    const far = { name: 'far', seq: Number.MAX_SAFE_INTEGER, prev: 'x' };
    expect(found(a, far).map(([id]) => id)).toEqual(['gap:T0000001/2', `orphan:${idOf('far')}`]);
  });
});

describe('a clock', () => {
  const late = CLOCK_TOLERANCE_MS / minute;

  test('may be out by the tolerance either way, and no more', () => {
    const seen = { name: 's', device: 'T0000009', seq: 1, got: [1, 10], at: 10 } as const;
    const at = (minutes: number) =>
      found(seen, { name: 'x', seq: 1, sees: 1, got: [2, 20], at: minutes }).map(([id]) => id);
    expect(at(10 - late)).toEqual([]);
    expect(at(20 + late)).toEqual([]);
    expect(at(10 - late - 0.001)).toEqual(['clock:T0000001/1']);
    expect(at(20 + late + 0.001)).toEqual(['clock:T0000001/1']);
  });

  test('is bounded by what an earlier fact of the chain had seen', () => {
    const seen = { name: 's', device: 'T0000009', seq: 1, got: [1, 60], at: 60 } as const;
    const facts = [
      seen,
      { name: 'x', seq: 1, sees: 1, at: 61 },
      { name: 'y', seq: 2, prev: 'x', at: 30 },
    ];
    expect(found(...facts)).toEqual([['clock:T0000001/2', 1]]);
  });

  test('is bounded by when a later fact of the chain arrived', () => {
    const facts = [
      { name: 'x', seq: 1, at: 45 },
      { name: 'y', seq: 2, prev: 'x', at: 8, got: [1, 10] } as const,
    ];
    const [only] = conclude(stateOf(facts));
    expect(only).toMatchObject({ id: 'clock:T0000001/1', off: 35 * minute });
  });

  test('that was wrong for a run of facts is one finding, off by the worst of them', () => {
    const run = [1, 2, 3].map((seq) => ({
      name: `r${seq}`,
      seq,
      ...(seq > 1 && { prev: `r${seq - 1}` }),
      at: 100 + seq,
      got: [seq, 5] as const,
    }));
    const [only, ...none] = conclude(stateOf(run));
    expect(none).toEqual([]);
    expect(only).toMatchObject({ id: 'clock:T0000001/1', off: 98 * minute });
    expect(only!.members).toHaveLength(3);
  });

  test('is not judged where nothing bounds it', () => {
    expect(
      found({ name: 'x', seq: 1, at: -5000 }, { name: 'y', seq: 2, prev: 'x', at: 5000 }),
    ).toEqual([]);
    expect(found({ name: 'x', seq: 1, sees: 77, at: -5000, got: [1, 0] })).toEqual([]);
  });
});

describe('the state of the envelopes', () => {
  const sketch = fc.record({
    name: fc.nat(30).map((n) => `f${n}`),
    device: fc.constantFrom('T0000001', 'T0000002'),
    seq: fc.oneof(fc.integer({ min: 1, max: 8 }), fc.constant(5000)),
    prev: fc.nat(30).map((n) => `f${n}`),
    at: fc.integer({ min: -50, max: 50 }),
    sees: fc.nat(20),
  });
  /** A set of facts: one content for an id, one receipt for a fact, one fact for a place. */
  const facts = fc
    .uniqueArray(sketch, { selector: ({ name }) => name, maxLength: 25 })
    .map((all) =>
      all.map((one, i) =>
        fact(i % 3 === 0 ? one : { ...one, got: [i - Math.floor(i / 3), i] as const }),
      ),
    );

  test('is the same for any order of the same facts, with repeats', () => {
    fc.assert(
      fc.property(facts, fc.infiniteStream(fc.nat()), (all, random) => {
        const keys = [...all, ...all].map((one) => [random.next().value as number, one] as const);
        const shuffled = keys.sort(([x], [y]) => x - y).map(([, one]) => one);
        const [once, again] = [all.reduce(evolve, initial()), shuffled.reduce(evolve, initial())];
        expect(digest(again)).toBe(digest(once));
        expect(conclude(again)).toEqual(conclude(once));
      }),
    );
  });

  test('kept conclusions never differ from fresh ones', () => {
    fc.assert(
      fc.property(facts, fc.array(fc.nat(20)), (all, cuts) => {
        const state = initial();
        const kept = concluder(state);
        for (const [i, one] of all.entries()) {
          evolve(state, one);
          if (cuts.includes(i)) cut(state, Math.floor(i / 2));
          expect(kept()).toEqual(conclude(state));
        }
      }),
    );
  });
});
