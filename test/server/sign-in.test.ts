import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { StaffId } from '../../src/care/ids.ts';
import { setPin } from '../../src/server/accounts/pin-handlers.ts';
import { clear, type Home, MANAGER, member, pinOf, startHome, WORKER } from './home.ts';

let home: Home;
beforeEach(async () => {
  home = await startHome();
});
afterEach(async () => {
  await home.stop();
  clear(home);
});

const signIn = (who: object, pin: string, newPin?: string) =>
  home.caller().call('POST', '/sign-in', { body: { who, pin, ...(newPin && { newPin }) } });

describe('signing in', () => {
  it('lets somebody in by name and PIN, however the name is typed', async () => {
    const heard = await signIn({ name: '  jonah   BEE' }, pinOf(WORKER));
    expect(heard.status).toBe(200);
    expect(heard.body).toMatchObject({
      staff: WORKER,
      name: 'Jonah Bee',
      called: 'Jonah',
      role: 'worker',
    });
    expect(heard.headers.get('cache-control')).toBe('no-store');
    const [cookie] = heard.headers.getSetCookie();
    expect(cookie).toMatch(/^tallyround_session=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/);
  });

  it('says the same of a wrong PIN, a stranger and a leaver', async () => {
    await home.tell([{ kind: 'staff.left', v: 1, data: { staff: WORKER, on: '2026-11-25' } }]);
    const heard = await Promise.all([
      signIn({ staff: MANAGER }, '000001'),
      signIn({ name: 'Nobody Here' }, '000001'),
      signIn({ staff: 'nobody99' }, '000001'),
      signIn({ staff: WORKER }, pinOf(WORKER)),
    ]);
    for (const each of heard) {
      expect(each.status).toBe(401);
      expect(each.body).toEqual({ reason: 'wrong' });
    }
  });

  it('needs both the cookie and the key of the page from then on', async () => {
    const caller = home.caller();
    await caller.signIn(WORKER, pinOf(WORKER));
    expect((await caller.call('GET', '/me')).body).toMatchObject({ staff: WORKER });
    const { key } = caller;
    caller.key = undefined;
    expect((await caller.call('GET', '/me')).status).toBe(401);
    caller.key = 'A'.repeat(43);
    expect((await caller.call('GET', '/me')).status).toBe(401);
    caller.key = key;
    caller.cookies.clear();
    expect((await caller.call('GET', '/me')).status).toBe(401);
  });

  it('ends the session before it, and signing out ends this one', async () => {
    const caller = home.caller();
    await caller.signIn(WORKER, pinOf(WORKER));
    const old = { cookies: new Map(caller.cookies), key: caller.key };
    await caller.signIn(WORKER, pinOf(WORKER));
    expect((await caller.call('GET', '/me')).status).toBe(200);
    const ghost = home.caller();
    for (const [name, value] of old.cookies) ghost.cookies.set(name, value);
    ghost.key = old.key;
    expect((await ghost.call('GET', '/me')).status).toBe(401);
    const before = new Map(caller.cookies);
    expect((await caller.call('POST', '/sign-out')).status).toBe(204);
    for (const [name, value] of before) caller.cookies.set(name, value);
    expect((await caller.call('GET', '/me')).status).toBe(401);
  });

  it('lasts a quarter of an hour without a call and a shift with calls', async () => {
    const caller = home.caller();
    await caller.signIn(WORKER, pinOf(WORKER));
    const status = async () => (await caller.call('GET', '/me')).status;
    home.clock.ms += 14 * 60_000;
    expect(await status()).toBe(200);
    home.clock.ms += 16 * 60_000;
    expect(await status()).toBe(401);
    await caller.signIn(WORKER, pinOf(WORKER));
    for (let minutes = 0; minutes <= 12 * 60; minutes += 10) {
      expect([minutes, await status()]).toEqual([minutes, 200]);
      home.clock.ms += 10 * 60_000;
    }
    expect(await status()).toBe(401);
  });

  it('ends at once for whoever leaves', async () => {
    const caller = home.caller();
    await caller.signIn(WORKER, pinOf(WORKER));
    await home.tell([{ kind: 'staff.left', v: 1, data: { staff: WORKER, on: '2026-11-25' } }]);
    expect((await caller.call('GET', '/me')).status).toBe(401);
  });

  it('makes one choose a PIN where somebody else has set it, before anything else', async () => {
    await setPin(home.parts, { staff: WORKER, pin: '204060' }, MANAGER);
    const caller = home.caller();
    expect((await caller.signIn(WORKER, '204060')).body).toEqual({ reason: 'pin-must-change' });
    expect(caller.cookies.size).toBe(0);
    const plain = await caller.signIn(WORKER, '204060', '123456');
    expect([plain.status, plain.body]).toEqual([
      422,
      { reason: 'pin-refused', fault: 'too-plain' },
    ]);
    const same = await caller.signIn(WORKER, '204060', '204060');
    expect(same.body).toEqual({ reason: 'pin-refused', fault: 'same-as-before' });
    expect((await caller.signIn(WORKER, '204060', '918273')).status).toBe(200);
    expect((await caller.signIn(WORKER, '204060')).status).toBe(401);
    expect((await caller.signIn(WORKER, '918273')).status).toBe(200);
  });

  it('tells two people of one name apart by their PINs', async () => {
    const other = 'jonahtwo' as StaffId;
    await home.tell(member(other, 'Jonah Bee', 'senior'));
    await setPin(home.parts, { staff: other, pin: '550011', mustChange: false }, MANAGER);
    expect((await signIn({ name: 'Jonah Bee' }, '550011')).body).toMatchObject({ staff: other });
    expect((await signIn({ name: 'Jonah Bee' }, pinOf(WORKER))).body).toMatchObject({
      staff: WORKER,
    });
  });

  it('says where a badly formed call is wrong, and never what was sent', async () => {
    const heard = await home
      .caller()
      .call('POST', '/sign-in', { body: { who: { staff: WORKER }, pin: 402917 } });
    expect([heard.status, heard.body]).toEqual([
      400,
      { reason: 'bad-request', where: 'pin', what: 'expected string' },
    ]);
    const broken = await home.caller().call('POST', '/sign-in', { body: '{"pin":"402917"' });
    expect(broken.status).toBe(400);
    expect(JSON.stringify(broken.body)).not.toContain('402917');
    const large = await home
      .caller()
      .call('POST', '/sign-in', { body: { pin: '4'.repeat(20_000) } });
    expect([large.status, large.body]).toEqual([413, { reason: 'too-large' }]);
  });
});

describe('wrong PINs', () => {
  it('make even the right one wait after five, longer each time, and for strangers as for staff', async () => {
    for (const who of [{ staff: WORKER }, { name: 'Nobody Here' }]) {
      for (let i = 0; i < 5; i++) expect((await signIn(who, '000001')).status).toBe(401);
      const heard = await signIn(who, 'name' in who ? '000001' : pinOf(WORKER));
      expect([heard.status, heard.body]).toEqual([429, { reason: 'wait', waitMs: 30_000 }]);
    }
    home.clock.ms += 30_000;
    expect((await signIn({ staff: WORKER }, '000001')).status).toBe(401);
    expect((await signIn({ staff: WORKER }, pinOf(WORKER))).body).toEqual({
      reason: 'wait',
      waitMs: 60_000,
    });
    home.clock.ms += 60_000;
    expect((await signIn({ staff: WORKER }, pinOf(WORKER))).status).toBe(200);
    expect((await signIn({ staff: WORKER }, '000001')).status).toBe(401);
    expect((await signIn({ staff: WORKER }, pinOf(WORKER))).status).toBe(200);
  });

  it('cannot slip through by being tried all at once', async () => {
    const heard = await Promise.all(
      Array.from({ length: 40 }, (_, i) => signIn({ staff: WORKER }, String(100_100 + i))),
    );
    expect(heard.filter(({ status }) => status === 401).length).toBe(5);
    expect(heard.filter(({ status }) => status === 429).length).toBe(35);
  });

  it('of one day do not add up with those of the next', async () => {
    for (let day = 0; day < 12; day += 1) {
      for (const _ of [1, 2]) {
        expect((await signIn({ staff: WORKER }, '000001')).status).toBe(401);
        expect((await signIn({ staff: WORKER }, pinOf(WORKER))).status).toBe(200);
      }
      home.clock.ms += 12 * 3_600_000;
    }
  });

  it('at a shared name close the other’s door as well, and signing in opens only one’s own', async () => {
    const other = 'jonahtwo' as StaffId;
    await home.tell(member(other, 'Jonah Bee', 'senior'));
    await setPin(home.parts, { staff: other, pin: '550011', mustChange: false }, MANAGER);
    const byName = (pin: string) => signIn({ name: 'Jonah Bee' }, pin);
    let waits = 0;
    for (let turn = 0; turn < 10; turn += 1) {
      for (let i = 0; i < 4; i += 1) if ((await byName('000001')).status === 429) waits += 1;
      await byName(pinOf(WORKER));
    }
    expect(waits).toBeGreaterThan(20);
  });

  it('are not forgiven by a restart', async () => {
    for (let i = 0; i < 5; i++) await signIn({ staff: WORKER }, '000001');
    await home.stop();
    home = await startHome({}, home);
    expect((await signIn({ staff: WORKER }, pinOf(WORKER))).body).toMatchObject({ reason: 'wait' });
  });

  it('of one address count together, whoever is tried', async () => {
    for (let i = 0; i < 20; i++)
      expect((await signIn({ name: `Guess ${i}` }, '000001')).status).toBe(401);
    expect((await signIn({ staff: WORKER }, pinOf(WORKER))).status).toBe(429);
  });

  it('with an old PIN make nobody wait once a manager has set another', async () => {
    for (let i = 0; i < 5; i++) await signIn({ staff: WORKER }, '000001');
    await setPin(home.parts, { staff: WORKER, pin: '204060', mustChange: false }, MANAGER);
    expect((await signIn({ staff: WORKER }, '204060')).status).toBe(200);
  });
});
