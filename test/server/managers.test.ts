import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { StaffId } from '../../src/care/ids.ts';
import type { Draft } from '../../src/ledger/append.ts';
import { canonicalText } from '../../src/ledger/canonical.ts';
import { erase } from '../../src/ledger/erasure.ts';
import { pureHash } from '../../src/ledger/hash.ts';
import { CHAIN_START, type FactId, instantOf, NO_FACT } from '../../src/ledger/ids.ts';
import { setPin } from '../../src/server/accounts/pin-handlers.ts';
import type { Caller } from './caller.ts';
import { TabletCopy } from './facts.ts';
import { clear, type Home, MANAGER, member, pinOf, SERVICE, startHome, WORKER } from './home.ts';

/** Who may give PINs is never decided by what a tablet writes in somebody's name. */
let home: Home;
let tablet: Caller;
let copy: TabletCopy;
beforeEach(async () => {
  home = await startHome();
  tablet = home.caller();
  await tablet.signIn(MANAGER, pinOf(MANAGER));
  copy = await new TabletCopy(tablet, home.clock).begin(await tablet.enrol('Hall tablet'));
});
afterEach(async () => {
  await home.stop();
  clear(home);
});

const role = (staff: StaffId, as: string, replaces: readonly string[] = []): Draft => ({
  kind: 'staff.role',
  v: 1,
  data: { staff, role: as, ...(replaces.length > 0 && { replaces: [...replaces] }) },
});
const left = (staff: StaffId): Draft => ({
  kind: 'staff.left',
  v: 1,
  data: { staff, on: '2026-11-25' },
});
const grantOf = async (staff: StaffId): Promise<string> => {
  const log = await home.parts.ledger.store.opened(0, 1000);
  return log.find(({ kind, data }) => kind === 'staff.role' && data['staff'] === staff)?.id ?? '';
};
const accounts = async (caller: Caller) => (await caller.call('GET', '/accounts')).status;
const handsTo = async (staff: StaffId) => {
  expect((await tablet.signIn(staff, pinOf(staff))).status).toBe(200);
};

describe('a worker with a tablet in their own hands', () => {
  it('does not become a manager by writing so', async () => {
    await handsTo(WORKER);
    await copy.write(WORKER, role(WORKER, 'manager', [await grantOf(WORKER)]));
    expect(await copy.sync()).toMatchObject({ ok: true });
    expect(await accounts(tablet)).toBe(403);
    expect((await tablet.call('GET', '/me')).body).toMatchObject({ role: 'worker' });
  });

  it('nor by writing so in the manager’s name, who is not there', async () => {
    await handsTo(WORKER);
    await copy.write(MANAGER, role(WORKER, 'manager', [await grantOf(WORKER)]));
    await copy.sync();
    expect(await accounts(tablet)).toBe(403);
    await copy.write(MANAGER, role(WORKER, 'senior'));
    await copy.sync();
    expect((await tablet.call('GET', '/me')).body).toMatchObject({ role: 'senior' });
  });

  it('nor in the name of a server', async () => {
    await handsTo(WORKER);
    const body = canonicalText({
      ...{ service: SERVICE, device: 'S0000000', seq: 1, prev: NO_FACT, seen: CHAIN_START },
      ...{ at: instantOf(home.clock.ms), off: 0, by: MANAGER, ...role(WORKER, 'manager') },
    });
    await copy.store.commit({ wait: [{ id: pureHash(body) as FactId, body }] });
    await copy.sync();
    expect(await accounts(tablet)).toBe(403);
  });

  it('takes nobody’s role, and shuts nobody out', async () => {
    await handsTo(WORKER);
    const grant = await grantOf(MANAGER);
    await copy.write(WORKER, left(MANAGER));
    await copy.write(MANAGER, left(MANAGER));
    await copy.write(WORKER, role(MANAGER, 'worker', [grant]));
    await copy.write(MANAGER, role(MANAGER, 'worker', [grant]));
    await copy.sync();
    const desk = home.caller();
    expect((await desk.signIn(MANAGER, pinOf(MANAGER))).status).toBe(200);
    expect(await accounts(desk)).toBe(200);
  });
});

describe('a manager', () => {
  const SECOND = 'wrenlark1' as StaffId;

  it('makes another one on a tablet they hold: it counts at once', async () => {
    for (const draft of member(SECOND, 'Wren Lark', 'manager')) await copy.write(MANAGER, draft);
    await copy.sync();
    const given = { staff: SECOND, pin: '550011', mustChange: false };
    expect(await setPin(home.parts, given, MANAGER)).toMatchObject({ ok: true });
    const desk = home.caller();
    await desk.signIn(SECOND, '550011');
    expect(await accounts(desk)).toBe(200);
  });

  it('who did it without a signal vouches for it by signing in there, and nowhere else', async () => {
    await handsTo(WORKER);
    await copy.write(MANAGER, role(WORKER, 'manager', [await grantOf(WORKER)]));
    await copy.sync();
    await home.caller().signIn(MANAGER, pinOf(MANAGER));
    expect(await accounts(tablet)).toBe(403);
    await handsTo(MANAGER);
    await handsTo(WORKER);
    expect(await accounts(tablet)).toBe(200);
  });

  it('is still one where a restored server is told again what it knew', async () => {
    for (const draft of member(SECOND, 'Wren Lark', 'manager')) await copy.write(MANAGER, draft);
    await copy.sync();
    await handsTo(WORKER);
    // The same facts come once more, from a tablet that nobody vouches on: they are known.
    const log = await home.parts.ledger.store.confirmed(0, 1000);
    const again = log.filter(({ body }) => body.includes(SECOND));
    await copy.store.commit({ wait: again.map(({ id, body }) => ({ id, body })) });
    await copy.sync();
    expect(await home.parts.rights.colleague(SECOND)).toMatchObject({ role: 'manager' });
  });
});

it('a name that is erased goes from the server’s memory too', async () => {
  const log = await home.parts.ledger.store.opened(0, 1000);
  const named = log.find(
    ({ kind, data }) => kind === 'staff.described' && data['staff'] === WORKER,
  );
  expect(await home.parts.rights.colleague(WORKER)).toMatchObject({ name: 'Jonah Bee' });
  const at = instantOf(home.clock.ms);
  if (named === undefined || at === undefined) throw new Error('nobody is named');
  const writer = { by: named.by, now: at, salt: () => new Uint8Array(16) };
  await erase(home.parts.ledger, { targets: [named.id], reason: 'retention' }, writer);
  expect(await home.parts.rights.colleague(WORKER)).toMatchObject({ name: '', role: 'worker' });
});
