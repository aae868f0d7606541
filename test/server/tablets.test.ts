import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Enrolled, SignedIn } from '../../src/procedures/access/wire.ts';
import type { DeviceLine } from '../../src/server/accounts/devices.ts';
import { setPin } from '../../src/server/accounts/pin-handlers.ts';
import type { Caller } from './caller.ts';
import { moved, TabletCopy } from './facts.ts';
import { clear, type Home, MANAGER, pinOf, startHome, WORKER } from './home.ts';

let home: Home;
beforeEach(async () => {
  home = await startHome();
});
afterEach(async () => {
  await home.stop();
  clear(home);
});

async function newTablet(name?: string) {
  const caller = home.caller();
  await caller.signIn(MANAGER, pinOf(MANAGER));
  const enrolled = await caller.enrol(name);
  const copy = await new TabletCopy(caller, home.clock).begin(enrolled);
  return { caller, enrolled, copy };
}
const signedIn = async (caller: Caller, pin = pinOf(WORKER)) =>
  (await caller.signIn(WORKER, pin)).body as unknown as SignedIn;

describe('enrolling a tablet', () => {
  it('gives it an id, a key for what rests on it and both halves of its credential', async () => {
    const { caller, enrolled } = await newTablet();
    expect(enrolled.device).toMatch(/^T[\w-]{7}$/);
    for (const secret of [enrolled.tabletKey, enrolled.syncKey])
      expect(secret).toMatch(/^[\w-]{43}$/);
    expect(enrolled.rules).toMatchObject({
      title: 'Aldermere',
      zone: 'Europe/London',
      leaseDays: 7,
    });
    expect(enrolled.lease).toBe('2026-12-02T09:00:00.000Z');
    expect(caller.cookies.has('tallyround_tablet')).toBe(true);
    const listed = (await caller.call('GET', '/devices')).body['devices'] as DeviceLine[];
    expect(listed).toEqual([
      {
        id: enrolled.device,
        name: 'Kitchen tablet',
        osLock: true,
        diskEncrypted: true,
        enrolledAt: '2026-11-25T09:00:00.000Z',
        enrolledBy: MANAGER,
        lost: false,
      },
    ]);
  });

  it('lets staff who then sign in on it open what rests on it, and nobody elsewhere', async () => {
    const { caller, enrolled } = await newTablet();
    expect((await signedIn(caller)).tablet).toMatchObject({
      device: enrolled.device,
      tabletKey: enrolled.tabletKey,
    });
    expect((await signedIn(home.caller())).tablet).toBeUndefined();
  });

  it('is kept by a restart, as are sessions', async () => {
    const { caller, copy } = await newTablet();
    await copy.write(WORKER, moved('tamsin01'));
    await home.stop();
    home = await startHome({}, home);
    const again = home.caller();
    for (const [name, value] of caller.cookies) again.cookies.set(name, value);
    again.key = caller.key;
    again.syncKey = caller.syncKey;
    expect((await again.call('GET', '/me')).status).toBe(200);
    const moving = new TabletCopy(again, home.clock);
    await moving.begin({ device: (await copy.store.head()).device?.id } as unknown as Enrolled);
    expect((await moving.sync()).ok).toBe(true);
  });
});

describe('sync', () => {
  it('carries facts both ways between two tablets', async () => {
    const [a, b] = [await newTablet('A'), await newTablet('B')];
    await a.copy.write(WORKER, moved('tamsin01'));
    await b.copy.write(MANAGER, moved('corwen02'));
    for (const { copy } of [a, b, a]) expect(await copy.sync()).toMatchObject({ ok: true });
    const [headA, headB] = [await a.copy.store.head(), await b.copy.store.head()];
    expect(headA.pending).toBe(0);
    expect(headA.chain).toBe(headB.chain);
    // Four facts of staff were there before.
    expect(headA.position).toBe(6);
    expect(a.copy.last?.lease).toBe('2026-12-02T09:00:00.000Z');
    const listed = (await a.caller.call('GET', '/devices')).body['devices'] as DeviceLine[];
    expect(listed.map(({ lastMet }) => lastMet)).toEqual(Array(2).fill('2026-11-25T09:00:00.000Z'));
  });

  it('needs both halves of the credential: a stolen cookie pulls nothing, nor does a key', async () => {
    const { caller, copy } = await newTablet();
    const { syncKey } = caller;
    for (const wrong of [undefined, 'A'.repeat(43)]) {
      caller.syncKey = wrong;
      expect(await copy.sync()).toMatchObject({ ok: false, status: 401, reason: 'device-unknown' });
    }
    caller.syncKey = syncKey;
    caller.cookies.delete('tallyround_tablet');
    expect(await copy.sync()).toMatchObject({ ok: false, status: 401, reason: 'device-unknown' });
    expect(copy.last).toBeUndefined();
  });

  it('does not let one tablet speak as another', async () => {
    const [a, b] = [await newTablet('A'), await newTablet('B')];
    const mixed = await new TabletCopy(a.caller, home.clock).begin(b.enrolled);
    expect(await mixed.sync()).toMatchObject({ ok: false, status: 400, reason: 'bad-request' });
    a.caller.syncKey = b.enrolled.syncKey;
    expect(await a.copy.sync()).toMatchObject({ ok: false, status: 401 });
  });

  it('needs nobody signed in, and a session does not replace it', async () => {
    const { caller, copy } = await newTablet();
    caller.key = undefined;
    caller.cookies.delete('tallyround_session');
    expect(await copy.sync()).toMatchObject({ ok: true });
  });

  it('refuses a fact of bad form by its place, and the tablet goes on without it', async () => {
    const { caller, copy, enrolled } = await newTablet();
    const request = {
      device: enrolled.device,
      format: 1,
      now: '2026-11-25T09:00:00.000Z',
      marks: [{ position: 0, chain: 'A'.repeat(43) }],
      push: [{ body: '{"kind":"person.went"}' }],
    };
    const heard = await caller.call('POST', '/sync', { body: request });
    expect([heard.status, heard.body]).toEqual([
      400,
      { ok: false, reason: 'missing-key', detail: 'at', index: 0 },
    ]);
    await copy.write(WORKER, moved('tamsin01'));
    expect(await copy.sync()).toMatchObject({ ok: true });
  });

  it('turns away a push beyond its limits, and a tablet that is newer', async () => {
    const { caller, copy, enrolled } = await newTablet();
    const base = {
      device: enrolled.device,
      format: 1,
      now: '2026-11-25T09:00:00.000Z',
      marks: [{ position: 0, chain: 'A'.repeat(43) }],
    };
    const facts = (count: number, length: number) =>
      Array.from({ length: count }, () => ({ body: 'x'.repeat(length) }));
    const status = async (push: unknown) =>
      (await caller.call('POST', '/sync', { body: { ...base, push } })).status;
    expect(await status(facts(501, 1))).toBe(413);
    expect(await status(facts(100, 10_001))).toBe(413);
    expect(await status(facts(3, 1_000_000))).toBe(413);
    expect(await copy.sync(2)).toMatchObject({ ok: false, status: 426 });
    expect((await caller.call('POST', '/sync', { body: 'no json' })).status).toBe(400);
    expect((await caller.call('POST', '/sync', { body: [] })).status).toBe(400);
  });

  it('takes a message of as many and as long facts as a tablet may send', async () => {
    const { copy } = await newTablet();
    for (let i = 0; i < 70; i++)
      await copy.write(WORKER, {
        kind: 'person.described',
        v: 1,
        data: { person: `person${i}`, about: 'photo' },
        private: { value: '"'.repeat(14_000) },
      });
    expect(await copy.sync()).toMatchObject({ ok: true });
    expect((await copy.store.head()).pending).toBe(0);
  });
});

describe('a retired tablet', () => {
  it('is turned away, keeps its facts, and delivers them when a manager enrols it again', async () => {
    const { caller, copy, enrolled } = await newTablet();
    await copy.write(WORKER, moved('tamsin01'));
    const manager = home.caller();
    await manager.signIn(MANAGER, pinOf(MANAGER));
    const path = `/devices/${enrolled.device}/retire`;
    expect((await manager.call('POST', path, { body: { lost: false } })).status).toBe(204);
    expect(await copy.sync()).toMatchObject({ ok: false, status: 403, reason: 'device-retired' });
    expect((await copy.store.head()).pending).toBe(1);
    expect((await signedIn(caller)).tablet).toBeUndefined();

    await caller.signIn(MANAGER, pinOf(MANAGER));
    const body = { name: 'Found again', osLock: true, diskEncrypted: true };
    const heard = await caller.call('POST', '/devices', {
      body: { ...body, before: { device: enrolled.device } },
    });
    const again = heard.body as unknown as Enrolled;
    expect(again.device).not.toBe(enrolled.device);
    expect(again.tabletKey).toBe(enrolled.tabletKey);
    expect(again.syncKey).not.toBe(enrolled.syncKey);
    caller.syncKey = again.syncKey;
    await copy.begin(again);
    expect(await copy.sync()).toMatchObject({ ok: true });
    expect((await copy.store.head()).pending).toBe(0);
  });

  it('that is lost has its key deleted here; found, it brings its own', async () => {
    const { caller, enrolled } = await newTablet();
    const path = `/devices/${enrolled.device}/retire`;
    await caller.call('POST', path, { body: { lost: true } });
    await caller.signIn(MANAGER, pinOf(MANAGER));
    const body = { name: 'Found', osLock: true, diskEncrypted: true };
    const enrol = (before: object) =>
      caller.call('POST', '/devices', { body: { ...body, before } });
    const gone = await enrol({ device: enrolled.device });
    expect([gone.status, gone.body]).toEqual([409, { reason: 'tablet-key-gone' }]);
    const { tabletKey } = enrolled;
    const back = await enrol({ device: enrolled.device, tabletKey });
    expect(back.body).toMatchObject({ tabletKey });
    expect((await enrol({ device: 'T0000000' })).status).toBe(404);
  });
});

describe('copies of a tablet’s key', () => {
  it('are called back at next contact when a PIN changes or ends, or somebody leaves', async () => {
    const { caller, copy } = await newTablet();
    const revoked = async () => {
      await copy.sync();
      return copy.last?.revoked;
    };
    await signedIn(caller);
    expect(await revoked()).toEqual([]);
    await setPin(home.parts, { staff: WORKER, pin: '204060', mustChange: false }, MANAGER);
    expect(await revoked()).toEqual([WORKER]);
    await signedIn(caller, '204060');
    expect(await revoked()).toEqual([]);
    await caller.signIn(MANAGER, pinOf(MANAGER));
    await caller.call('DELETE', `/accounts/${WORKER}/pin`);
    expect(await revoked()).toEqual([WORKER]);
    await setPin(home.parts, { staff: WORKER, pin: '204060', mustChange: false }, MANAGER);
    await signedIn(caller, '204060');
    await home.tell([{ kind: 'staff.left', v: 1, data: { staff: WORKER, on: '2026-11-25' } }]);
    expect(await revoked()).toEqual([WORKER]);
  });

  it('follow a PIN that its owner changes on the tablet', async () => {
    const { caller, copy, enrolled } = await newTablet();
    await signedIn(caller);
    const wrong = await caller.call('POST', '/pin', { body: { pin: '000001', newPin: '918273' } });
    expect([wrong.status, wrong.body]).toEqual([401, { reason: 'wrong' }]);
    const heard = await caller.call('POST', '/pin', {
      body: { pin: pinOf(WORKER), newPin: '918273' },
    });
    expect(heard.body).toMatchObject({ tablet: { tabletKey: enrolled.tabletKey } });
    await copy.sync();
    expect(copy.last?.revoked).toEqual([]);
  });
});

describe('what managers did', () => {
  it('can be read, newest first, without anything that was typed', async () => {
    const { caller, enrolled } = await newTablet();
    await caller.call('PUT', `/accounts/${WORKER}/pin`, { body: { pin: '204060' } });
    await caller.call('PATCH', `/devices/${enrolled.device}`, { body: { name: 'Hall' } });
    const { body } = await caller.call('GET', '/accounts/events');
    const at = '2026-11-25T09:00:00.000Z';
    expect((body['events'] as unknown[]).slice(0, 4)).toEqual([
      { at, what: 'device-renamed', by: MANAGER, about: enrolled.device },
      { at, what: 'pin-set', by: MANAGER, about: WORKER },
      { at, what: 'device-enrolled', by: MANAGER, about: enrolled.device },
      { at, what: 'signed-in', by: MANAGER },
    ]);
    const { accounts } = (await caller.call('GET', '/accounts')).body as { accounts: object[] };
    expect(accounts).toContainEqual({ staff: WORKER, mustChange: true, setAt: at, setBy: MANAGER });
    expect(JSON.stringify(accounts)).not.toContain('argon2');
  });
});
