import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { carriedPolicies } from '../../policies/carried.ts';
import type { PersonId } from '../../src/care/ids.ts';
import { personOf } from '../../src/care/people/person.ts';
import type { Body } from '../../src/ledger/fact.ts';
import type { FactId } from '../../src/ledger/ids.ts';
import {
  type ErasedWhat,
  type ErasureAsked,
  eraseParts,
  goneWithParts,
} from '../../src/server/operations/erase.ts';
import { verifyService } from '../../src/server/operations/verify.ts';
import { HomeReader } from '../../src/server/service/home-reader.ts';
import { type Running, serve } from '../../src/server/start/serve.ts';
import { Caller } from './caller.ts';
import { moved, TabletCopy } from './facts.ts';
import { machineFor, optionsFor } from './machine.ts';

// Two years on, so that whoever went on the day that the drafts say has gone.
const world = machineFor([], { now: () => Date.parse('2028-03-01T09:00:00.000Z') });
let folder: string;
let data: string;
let running: Running;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tallyround-erase-'));
  data = join(folder, 'data');
  running = await serve(optionsFor(data), world);
});
afterEach(async () => {
  await running.stop();
  rmSync(folder, { recursive: true });
});

async function newTablet() {
  const caller = new Caller(running.url);
  await caller.signIn('ottoline', '402917');
  const enrolled = await caller.enrol();
  const { service } = running.parts.accounts.settings;
  const copy = await new TabletCopy(caller, { ms: world.now() }, service).begin(enrolled);
  await copy.sync();
  return copy;
}

const asked = (what: ErasedWhat, more: Partial<ErasureAsked> = {}): ErasureAsked => ({
  ...{ what, reason: 'retention', manager: 'Ottoline Brack', ...more },
});
const corwen: ErasedWhat = { of: 'person', who: 'corwen vale' };
const show = (what: ErasedWhat, more?: Partial<ErasureAsked>) =>
  eraseParts(data, world, asked(what, more), { now: false });
const erase = (what: ErasedWhat, more?: Partial<ErasureAsked>) =>
  eraseParts(data, world, asked(what, more), { now: true });
const entries = () => running.parts.ledger.store.confirmed(0, 1000);
const held = async (name: string) => JSON.stringify(await entries()).includes(name);

/** A tablet on which it was written down that Corwen Vale has moved away. */
async function corwenMoved() {
  const tablet = await newTablet();
  const room = { person: 'person00', about: 'room' };
  const value = { value: 'the room by the stairs' };
  await tablet.write('jonahbee', { kind: 'person.described', v: 1, data: room, private: value });
  await tablet.write('jonahbee', moved('person00'));
  await tablet.sync();
  return tablet;
}

describe('erasing what is private about somebody', () => {
  it('is shown first, by counts and without their words, and nothing goes', async () => {
    await corwenMoved();
    const head = await running.parts.ledger.store.head();
    const plan = await show(corwen);
    expect(plan).toMatchObject({ ok: true, manager: 'Ottoline Brack', perhaps: [] });
    if (!plan.ok) throw new Error(plan.reason);
    expect([...plan.kinds]).toEqual([['person.described', 2]]);
    expect(JSON.stringify(plan)).not.toMatch(/Corwen|stairs/);
    expect(await running.parts.ledger.store.head()).toEqual(head);
    expect(await held('Corwen')).toBe(true);
  });

  it('beside the running server: gone from the file, from every tablet and from the server’s memory', async () => {
    const tablet = await corwenMoved();
    const { zone } = running.parts.accounts.settings;
    const reader = new HomeReader(running.parts.ledger.store, {
      zone,
      policies: carriedPolicies(),
    });
    const name = async () => personOf(await reader.read(), 'person00' as PersonId).name;
    expect(await name()).toBe('Corwen Vale');
    const done = await erase(corwen);
    expect(done).toMatchObject({ ok: true });
    if (!done.ok) throw new Error(done.reason);
    expect(await held('Corwen')).toBe(false);
    expect(await held('stairs')).toBe(false);
    expect(await held('Tamsin Rook')).toBe(true);
    expect(await name()).toBe('');
    expect(personOf(await reader.read(), 'person00' as PersonId).erased).toBe(true);
    const raw = ['ledger.sqlite', 'ledger.sqlite-wal'].map((f) => readFileSync(join(data, f)));
    expect(Buffer.concat(raw).includes('Corwen Vale')).toBe(false);

    expect(await tablet.sync()).toMatchObject({ ok: true });
    const there = JSON.stringify(await tablet.store.confirmed(0, 1000));
    expect(there).not.toMatch(/Corwen|stairs/);
    const last = (await entries()).at(-1);
    const body = JSON.parse(last?.body ?? '') as Body;
    const { targets, reason } = body.data;
    const { seal, ...unsealed } = body;
    expect(body).toMatchObject({ kind: 'erased', by: 'ottoline' });
    expect([targets, reason]).toEqual([done.targets, 'retention']);
    expect(seal).toBe(running.parts.ledger.seal?.of(unsealed));
    expect(world.openErasures(join(data, 'erased-ids.txt')).ids()).toEqual(done.targets);
    expect((await verifyService(data, world)).exit).toBe(0);
    expect(await erase({ of: 'person', who: 'person00' })).toEqual({
      ok: false,
      reason: 'nothing',
    });
  });

  it('is refused while they are here, or until the day comes on which they leave', async () => {
    const tablet = await newTablet();
    expect(await erase(corwen)).toEqual({ ok: false, reason: 'still-here' });
    const later = { person: 'person00', on: '2028-03-02', to: 'moved' };
    await tablet.write('jonahbee', { kind: 'person.went', v: 1, data: later });
    const away = { person: 'person01', on: '2028-02-01', to: 'hospital' };
    await tablet.write('jonahbee', { kind: 'person.went', v: 1, data: away });
    await tablet.sync();
    expect(await erase(corwen)).toEqual({ ok: false, reason: 'still-here' });
    const inHospital = await erase({ of: 'person', who: 'Tamsin Rook' });
    expect(inHospital).toEqual({ ok: false, reason: 'still-here' });
    const working = await erase({ of: 'colleague', who: 'Jonah Bee' });
    expect(working).toEqual({ ok: false, reason: 'still-here' });
    expect(await held('Corwen')).toBe(true);
  });

  it('single facts go even while they live here; a slip in one id stops them all', async () => {
    const all = await entries();
    const id = all.find((each) => each.private?.includes('Corwen'))?.id as FactId;
    const role = all.find((each) => each.body.includes('staff.role'))?.id as FactId;
    const wrong = `${id.slice(0, 42)}${id.endsWith('A') ? 'B' : 'A'}`;
    for (const slip of [wrong, 'no id'])
      expect(await erase({ of: 'facts', ids: [id, slip] })).toEqual({
        ...{ ok: false, reason: 'unknown-fact', detail: slip },
      });
    expect(await erase({ of: 'facts', ids: [role] })).toEqual({ ok: false, reason: 'nothing' });
    expect(await held('Corwen')).toBe(true);
    const done = await erase({ of: 'facts', ids: [id, role, id] }, { reason: 'wrong-entry' });
    expect(done).toMatchObject({ ok: true, targets: [id] });
    expect(await held('Corwen')).toBe(false);
  });

  it('a manager has to decide, and whoever is meant must be plain', async () => {
    await corwenMoved();
    const refused = (manager: string) => erase(corwen, { manager });
    expect(await refused('Jonah Bee')).toMatchObject({ reason: 'not-manager' });
    expect(await refused('marisol1')).toMatchObject({ reason: 'not-manager' });
    expect(await refused('Nobody')).toMatchObject({ reason: 'unknown' });
    const who = (name: string) => erase({ of: 'person', who: name });
    expect(await who('Corwen')).toMatchObject({ reason: 'unknown' });
    // Nor does the name of somebody erased, which is empty, answer to nothing at all.
    await erase(corwen);
    expect(await who('')).toMatchObject({ reason: 'unknown' });
    const two = await newTablet();
    const named = { kind: 'person.described', v: 1, private: { value: 'Tamsin Rook' } };
    await two.write('jonahbee', { ...named, data: { person: 'person09', about: 'name' } });
    await two.sync();
    expect(await who('Tamsin Rook')).toEqual({
      ...{ ok: false, reason: 'several', ids: ['person01', 'person09'] },
    });
  });

  it('a colleague who has left goes too; whoever could be erased is listed without a name', async () => {
    expect(await goneWithParts(data, world)).toEqual([]);
    const tablet = await corwenMoved();
    const left = { staff: 'jonahbee', on: '2026-12-24' };
    await tablet.write('ottoline', { kind: 'staff.left', v: 1, data: left });
    await tablet.sync();
    expect(await goneWithParts(data, world)).toEqual([
      { of: 'person', id: 'person00', on: '2026-11-25', parts: 2 },
      { of: 'colleague', id: 'jonahbee', on: '2026-12-24', parts: 1 },
    ]);
    expect(await erase({ of: 'colleague', who: 'jonahbee' })).toMatchObject({ ok: true });
    expect(await held('Jonah Bee')).toBe(false);
    expect(await goneWithParts(data, world)).toMatchObject([{ id: 'person00' }]);
  });
});
