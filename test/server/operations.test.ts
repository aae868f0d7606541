import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BackupLine } from '../../src/ledger/backup.ts';
import { erase } from '../../src/ledger/erasure.ts';
import type { Body } from '../../src/ledger/fact.ts';
import { type FactId, instantOf, type StaffId as LedgerStaffId } from '../../src/ledger/ids.ts';
import { readLines } from '../../src/ledger/stores/archive/lines.ts';
import { seal, unseal } from '../../src/ledger/stores/archive/passphrase.ts';
import { backUp, exportWithoutPrivate } from '../../src/server/operations/backup.ts';
import { beginService } from '../../src/server/operations/begin.ts';
import { withService } from '../../src/server/operations/existing.ts';
import { resetPin } from '../../src/server/operations/pins.ts';
import { restoreService } from '../../src/server/operations/restore.ts';
import { listTablets, retireTablet } from '../../src/server/operations/tablets.ts';
import { verifyService } from '../../src/server/operations/verify.ts';
import { startWords } from '../../src/server/start/faults.ts';
import { type Running, serve } from '../../src/server/start/serve.ts';
import { Caller } from './caller.ts';
import { moved, TabletCopy } from './facts.ts';
import { machineFor, optionsFor } from './machine.ts';

const world = machineFor([]);
let folder: string;
let data: string;
let running: Running;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tallyround-ops-'));
  data = join(folder, 'data');
  running = await serve(optionsFor(data), world);
});
afterEach(async () => {
  await running.stop();
  rmSync(folder, { recursive: true });
});

async function newTablet(url = running.url) {
  const caller = new Caller(url);
  await caller.signIn('ottoline', '402917');
  const enrolled = await caller.enrol();
  const copy = new TabletCopy(caller, { ms: Date.now() }, running.parts.accounts.settings.service);
  return { caller, enrolled, copy: await copy.begin(enrolled) };
}

async function linesOf(operation: typeof backUp): Promise<string[]> {
  const taken: string[] = [];
  await operation(data, world, async (lines) => {
    for await (const line of lines) taken.push(line);
  });
  return taken;
}
async function* read(lines: readonly string[]): AsyncGenerator<BackupLine> {
  for (const line of lines) yield await Promise.resolve(JSON.parse(line) as BackupLine);
}

describe('a backup', () => {
  it('made beside the running server and put back elsewhere is the same service', async () => {
    const { caller, copy } = await newTablet();
    await copy.write('jonahbee', moved('person00'));
    await copy.sync();
    const lines = await linesOf(backUp);
    const { chain, position } = await running.parts.ledger.store.head();
    await running.stop();

    const elsewhere = join(folder, 'elsewhere');
    expect(await restoreService(elsewhere, world, read(lines))).toEqual({
      ok: true,
      facts: position,
      erasedAgain: 0,
    });
    running = await serve(optionsFor(elsewhere), world);
    expect((await running.parts.ledger.store.head()).chain).toBe(chain);
    const again = new Caller(running.url);
    for (const [name, value] of caller.cookies) again.cookies.set(name, value);
    again.syncKey = caller.syncKey;
    // Sessions are of the day; tablets and PINs are not.
    again.key = caller.key;
    expect((await again.call('GET', '/me')).status).toBe(401);
    expect((await again.signIn('jonahbee', '735160')).body['tablet']).toBeDefined();
    const moving = new TabletCopy(
      again,
      { ms: Date.now() },
      running.parts.accounts.settings.service,
    );
    const { device } = await copy.store.head();
    await moving.begin({ device: device?.id } as never);
    expect(await moving.sync()).toMatchObject({ ok: true });
    expect((await verifyService(elsewhere, world)).exit).toBe(0);
  });

  it('goes through a sealed file, and only with its passphrase', async () => {
    const lines = await linesOf(backUp);
    const all = async function* () {
      for (const line of lines) yield await Promise.resolve(line);
    };
    const sealed = await seal(all(), 'correct horse', { workFactor: 10 });
    const bytes = new Uint8Array(await new Response(sealed as BodyInit).arrayBuffer());
    expect(Buffer.from(bytes).includes('Corwen')).toBe(false);
    const open = (passphrase: string) => unseal(new Blob([bytes]).stream(), passphrase);
    expect(await open('wrong')).toMatchObject({ ok: false, reason: 'wrong-passphrase' });
    const opened = await open('correct horse');
    if (!opened.ok) throw new Error(opened.reason);
    const elsewhere = join(folder, 'elsewhere');
    const again = readLines(opened.bytes);
    expect(await restoreService(elsewhere, world, again)).toMatchObject({ ok: true });
  });

  it('that is cut off or changed leaves nothing behind, and one put over a service is refused', async () => {
    const lines = await linesOf(backUp);
    const elsewhere = join(folder, 'elsewhere');
    const cut = await restoreService(elsewhere, world, read(lines.slice(0, -1)));
    expect(cut).toMatchObject({ ok: false, reason: 'cut-off' });
    const changed = lines.map((line) => line.replace('Corwen', 'Corven'));
    expect(await restoreService(elsewhere, world, read(changed))).toMatchObject({
      reason: 'broken',
    });
    expect(await restoreService(data, world, read(lines))).toMatchObject({ reason: 'not-empty' });
    expect(readdirSync(folder)).toEqual(['data']);
  });

  it('from before an erasure does not bring back what was erased', async () => {
    const lines = await linesOf(backUp);
    const { ledger } = running.parts;
    const entries = await ledger.store.confirmed(0, 100);
    const target = entries.find((entry) => entry.private?.includes('Corwen'))?.id as FactId;
    const now = instantOf(Date.now());
    if (!now) throw new Error('no now');
    const writer = { by: 'ottoline' as LedgerStaffId, now, salt: () => world.random(16) };
    expect(await erase(ledger, { targets: [target], reason: 'retention' }, writer)).toMatchObject({
      ok: true,
    });
    const remembered = world.openErasures(join(data, 'erased-ids.txt')).ids();
    expect(remembered).toEqual([target]);
    const elsewhere = join(folder, 'elsewhere');
    const done = await restoreService(elsewhere, world, read(lines), { remembered });
    expect(done).toMatchObject({ ok: true, erasedAgain: 1 });
    const { seal: borne, ...body } = JSON.parse(entries[0]?.body ?? '') as Body;
    const [held, seal] = await withService(elsewhere, world, async ({ ledger: there }) => [
      JSON.stringify(await there.store.confirmed(0, 100)),
      there.seal?.of(body),
    ]);
    expect(held).not.toContain('Corwen');
    // The key came with the backup: what tablets carry of the old server is still known as its own.
    expect(seal).toBe(borne);
    expect(borne).toHaveLength(43);
  });
});

describe('a copy of the files put back over the service', () => {
  it('is found out when the server starts, and what was erased is erased again', async () => {
    const { ledger } = running.parts;
    await ledger.store.close();
    await running.stop();
    const copyOf = (file: string) => {
      const db = new Database(join(data, file), { readonly: true });
      const bytes = db.serialize();
      db.close();
      return bytes;
    };
    const old = copyOf('ledger.sqlite');
    running = await serve(optionsFor(data), world);
    const store = running.parts.ledger.store;
    const target = (await store.confirmed(0, 100)).find((e) => e.private?.includes('Corwen'))
      ?.id as FactId;
    const now = instantOf(Date.now());
    if (!now) throw new Error('no now');
    const writer = { by: 'ottoline' as LedgerStaffId, now, salt: () => world.random(16) };
    await erase(running.parts.ledger, { targets: [target], reason: 'retention' }, writer);
    await running.stop();
    for (const end of ['', '-wal', '-shm'])
      rmSync(join(data, `ledger.sqlite${end}`), { force: true });
    writeFileSync(join(data, 'ledger.sqlite'), old);
    running = await serve(optionsFor(data), world);
    const held = JSON.stringify(await running.parts.ledger.store.confirmed(0, 100));
    expect(held).not.toContain('Corwen');
    expect((await running.parts.ledger.store.erased()).has(target)).toBe(true);
  });
});

describe('without the server', () => {
  it('an inspector’s export has every fact and no name, and no account', async () => {
    await newTablet();
    const lines = await linesOf(exportWithoutPrivate);
    const { position } = await running.parts.ledger.store.head();
    expect(lines.filter((line) => line.startsWith('{"fact"')).length).toBe(position);
    for (const word of ['Corwen', 'Ottoline', 'argon2', 'accounts/'])
      expect([word, lines.join('\n').includes(word)]).toEqual([word, false]);
  });

  it('damage is found and named', async () => {
    expect(await verifyService(data, world)).toMatchObject({ exit: 0, accounts: [] });
    await running.stop();
    const db = new Database(join(data, 'ledger.sqlite'));
    db.exec('DROP TRIGGER IF EXISTS fact_kept');
    for (const { name } of db
      .prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'")
      .all() as { name: string }[])
      db.exec(`DROP TRIGGER "${name}"`);
    db.exec(
      "UPDATE fact SET body = replace(body, 'manager', 'managed') WHERE body LIKE '%manager%'",
    );
    db.close();
    const verdict = await verifyService(data, world);
    expect(verdict.exit).toBe(2);
    expect(verdict.ledger.broken?.position).toBeGreaterThan(0);
    running = await serve(optionsFor(join(folder, 'other')), world);
  });

  it('a manager who has forgotten their PIN gets one for a single sign-in', async () => {
    expect(await resetPin(data, world, 'Nobody')).toEqual({ ok: false, reason: 'unknown' });
    const reset = await resetPin(data, world, 'ottoline brack');
    if (!reset.ok) throw new Error(reset.reason);
    const caller = new Caller(running.url);
    expect((await caller.signIn('ottoline', '402917')).status).toBe(401);
    expect((await caller.signIn('ottoline', reset.pin)).body).toEqual({
      reason: 'pin-must-change',
    });
    expect((await caller.signIn('ottoline', reset.pin, '918273')).status).toBe(200);
  });

  it('a lost tablet is refused while no manager is there', async () => {
    const { copy, enrolled } = await newTablet();
    expect((await listTablets(data, world)).map(({ id }) => id)).toEqual([enrolled.device]);
    expect(await retireTablet(data, world, { id: 'T0000000', lost: true })).toBe(false);
    expect(await retireTablet(data, world, { id: enrolled.device, lost: true })).toBe(true);
    expect(await copy.sync()).toMatchObject({ ok: false, status: 403 });
  });

  it('a real service is begun, once', async () => {
    const real = join(folder, 'real');
    const first = { title: 'Fernhollow', zone: 'Europe/London', manager: 'Ada Quill', pid: 1 };
    const begun = await beginService(real, world, first);
    if (!begun.ok) throw new Error(begun.reason);
    expect(await beginService(real, world, first)).toEqual({ ok: false, reason: 'exists' });
    const found = await withService(real, world, ({ rights }) => rights.colleague(begun.staff));
    expect(found).toMatchObject({ name: 'Ada Quill', role: 'manager' });
    expect(existsSync(join(real, 'in-use.json'))).toBe(false);
  });

  it('a folder without a service is told so', async () => {
    const error: unknown = await verifyService(join(folder, 'nothing'), world).catch(
      (e: unknown) => e,
    );
    expect(startWords(error)).toContain('There is no service in');
  });
});
