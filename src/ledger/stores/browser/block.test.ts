import { describe, expect, test } from 'vitest';
import { confirmed, mixed } from '../../../../test/contract/facts.ts';
import type { Instant } from '../../ids.ts';
import { encodeBlock, entriesOf, factsOf } from './block.ts';

const entries = confirmed(mixed(120));
const whole = { from: 0, to: Infinity };
const only = { over: new Set(['swab.taken']), since: '2026-11-25T08:01:00.000Z' as Instant };

/** The block as a program wrote it that knew nothing of choosing. */
function older(block: Uint8Array): Uint8Array {
  const [columns = '', ...rest] = new TextDecoder().decode(block).split('\n');
  const { choice: _, ...known } = JSON.parse(columns) as { readonly choice?: unknown };
  const lists = {
    arrived: entries.map(({ arrived }) => arrived),
    via: entries.map(({ via }) => via),
  };
  return new TextEncoder().encode([JSON.stringify({ ...known, ...lists }), ...rest].join('\n'));
}

describe.each([
  ['a block', (block: Uint8Array) => block],
  ['a block of an older program', older],
])('%s', (_title, made) => {
  const block = made(encodeBlock(entries));

  test('gives back each fact byte for byte, and opened', () => {
    expect(entriesOf(block)).toEqual(entries);
    expect(factsOf(block, whole).map(({ id, seq }) => [id, seq])).toEqual(
      entries.map(({ id }, i) => [id, i + 1]),
    );
  });

  test('gives the facts at some places, and of these those that pass', () => {
    const all = factsOf(block, whole);
    expect(factsOf(block, { from: 7, to: 31 })).toEqual(all.slice(7, 31));
    const passing = all.filter(({ kind, at }) => kind !== 'swab.taken' || at >= only.since);
    expect(passing.length).toBeLessThan(all.length);
    expect(factsOf(block, { ...whole, only })).toEqual(passing);
    expect(factsOf(block, { from: 0, to: 0 })).toEqual([]);
  });
});
