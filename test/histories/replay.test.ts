import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ENVELOPES_VERSION } from '../../src/ledger/findings/envelopes.ts';
import { type Digests, replay } from './replay.ts';
import { replayed } from './registry.ts';

type Recorded = Readonly<Record<string, Readonly<Record<string, string>>>>;
const recorded = JSON.parse(readFileSync(new URL('digests.json', import.meta.url), 'utf8')) as Recorded;

describe.each(replayed.map((one) => [one.history, one.name, one] as const))('%s through %s', (history, name, one) => {
  let digests: Promise<Digests> | undefined;
  const result = () => (digests ??= replay(one));

  test('replays whole: every id, every link, every fact readable', async () => {
    expect((await result()).facts).toBe(Number(recorded[history]?.['facts']));
    expect((await result()).unreadable).toBe(0);
  });

  test('gives the digest that was recorded for this number of the fold', async () => {
    const key = `${name} ${one.fold.fold}`;
    const { state } = await result();
    if (recorded[history]?.[key] === undefined)
      throw new Error(`a new fold: add to ${history} in digests.json  "${key}": "${state}"`);
    expect(state, `the digest changed, so the fold needs a new number`).toBe(recorded[history][key]);
  });

  test("gives the envelopes' digest that was recorded", async () => {
    const key = `envelopes ${ENVELOPES_VERSION}`;
    const { envelopes } = await result();
    if (recorded[history]?.[key] === undefined)
      throw new Error(`a new version: add to ${history} in digests.json  "${key}": "${envelopes}"`);
    expect(envelopes, 'the digest changed, so ENVELOPES_VERSION must rise').toBe(recorded[history][key]);
  });
});
