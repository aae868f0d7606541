import { randomBytes } from 'node:crypto';
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { TestId } from '../../src/care/ids.ts';
import type { Code } from '../../src/care/kind.ts';
import { findings } from '../../src/care/quality/findings.ts';
import { heldBy } from '../../src/care/quality/held.ts';
import type { Draft } from '../../src/ledger/append.ts';
import { askingPeers } from '../../src/server/group/ask-peer.ts';
import { Group } from '../../src/server/group/group.ts';
import { groupKeys, keyed, readGroupKeys } from '../../src/server/group/secret.ts';
import { PATH, PROOF_HEADER, proofOf, type Question } from '../../src/server/group/wire.ts';
import { HomeReader } from '../../src/server/service/home-reader.ts';
import { startWords } from '../../src/server/start/faults.ts';
import { readOptions } from '../../src/server/start/options.ts';
import { type Running, serve } from '../../src/server/start/serve.ts';
import { demoPolicy } from '../trial/home.ts';
import { Caller } from './caller.ts';
import { TabletCopy } from './facts.ts';
import { type Home, MANAGER, pinOf, startHome, WORKER } from './home.ts';
import { machineFor, optionsFor } from './machine.ts';

const CODE = 'KQT00000019';
const endings: (() => unknown)[] = [];
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tallyround-group-'));
  endings.push(() => rmSync(folder, { recursive: true }));
});
afterEach(async () => {
  for (const end of endings.splice(0).reverse()) await end();
});

const opened = (code: string, test = 'test01', replaces?: readonly string[]): Draft => ({
  kind: 'kit.opened',
  v: 1,
  data: {
    ...{ turn: 'turn01', test, code, how: 'scanned', kitKind: 'single-swab' },
    ...(replaces && { replaces: [...replaces] }),
  },
});

const secret = randomBytes(32);
const policies = [
  demoPolicy((policy) => {
    policy.group = { titleTold: { value: true, source: 'this test', from: '2026-01-01' as never } };
  }),
];

interface Member {
  readonly home: Home;
  readonly group: Group;
  readonly reader: HomeReader;
  readonly peers: URL[];
  /** A tablet of this home. */
  readonly tablet: TabletCopy;
  readonly caller: Caller;
}

/** A home of the group: a server that listens, and a tablet that has been enrolled with it. */
async function member(over: { secret?: Uint8Array; told?: boolean } = {}): Promise<Member> {
  const keys = groupKeys(over.secret ?? secret);
  const peers: URL[] = [];
  const made: { group?: Group; reader?: HomeReader } = {};
  const home = await startHome((parts) => {
    // Two services of one group never have one id.
    Object.assign(parts.accounts.settings, { service: `home-${randomBytes(4).toString('hex')}` });
    const carried = over.told === false ? [demoPolicy()] : policies;
    made.reader = new HomeReader(parts.ledger.store, { zone: 'Europe/London', policies: carried });
    made.group = new Group({
      ...{ parts, keys, peers, reader: made.reader, ask: askingPeers(keys.calls, []) },
    });
    return { group: made.group };
  });
  endings.push(home.stop);
  const { group, reader } = made;
  if (group === undefined || reader === undefined) throw new Error('no group');
  return { home, group, reader, peers, ...(await tabletOf(home.url, home.clock)) };
}

async function tabletOf(url: string, clock: { ms: number }, service?: string) {
  const caller = new Caller(url);
  await caller.signIn(MANAGER, pinOf(MANAGER));
  const enrolled = await caller.enrol();
  return { caller, tablet: await new TabletCopy(caller, clock, service).begin(enrolled) };
}

/** Two homes that know each other's address. */
async function pair(): Promise<[Member, Member]> {
  const [a, b] = [await member(), await member()];
  a.peers.push(new URL(b.home.url));
  b.peers.push(new URL(a.home.url));
  return [a, b];
}

async function uses({ tablet }: Pick<Member, 'tablet'>, ...drafts: readonly Draft[]) {
  for (const draft of drafts) await tablet.write(WORKER, draft);
  expect(await tablet.sync()).toMatchObject({ ok: true });
}

const asks = async ({ caller }: Pick<Member, 'caller'>, code: string) =>
  (await caller.call('POST', '/codes/elsewhere', { body: { code } })).body;

const found = async ({ reader }: Member) =>
  findings(await reader.read()).filter(({ kind }) => kind === 'code-elsewhere');

describe('a tablet that is about to open a kit', () => {
  it('is told that another home has used its code, and by what name', async () => {
    const [a, b] = await pair();
    await uses(a, opened(CODE));
    expect(await asks(b, CODE)).toEqual({
      ...{ group: true, used: true, homes: ['Aldermere'], complete: true },
    });
    expect(await asks(b, 'KQT00000027')).toMatchObject({ used: false, complete: true });
    // In its own home the ledger says so itself.
    expect(await asks(a, CODE)).toMatchObject({ used: false });
  });

  it('is told no name where the other home’s policy does not let it say one', async () => {
    const [a, b] = [await member({ told: false }), await member()];
    b.peers.push(new URL(a.home.url));
    await uses(a, opened(CODE));
    expect(await asks(b, CODE)).toMatchObject({ used: true, homes: [] });
  });

  it('may open it once the other home has put a wrong entry right', async () => {
    const [a, b] = await pair();
    await uses(a, opened(CODE));
    const [wrong] = await a.home.parts.ledger.store
      .opened(0, 1000)
      .then((facts) => facts.filter(({ kind }) => kind === 'kit.opened'));
    await uses(a, opened('KQT00000035', 'test01', [wrong?.id ?? '']));
    expect(await asks(b, CODE)).toMatchObject({ used: false });
    expect(await asks(b, 'KQT00000035')).toMatchObject({ used: true });
  });

  it('is answered in time where another home is not, and knows that not all were asked', async () => {
    const [a, b] = await pair();
    await uses(a, opened(CODE));
    const silent = createServer(() => undefined);
    await new Promise<void>((resolve) => silent.listen(0, '127.0.0.1', resolve));
    endings.push(() => silent.close());
    const { port } = silent.address() as AddressInfo;
    b.peers.push(new URL(`http://127.0.0.1:${port}`), new URL('http://127.0.0.1:9'));
    const began = performance.now();
    expect(await asks(b, CODE)).toMatchObject({ used: true, complete: false });
    expect(performance.now() - began).toBeLessThan(1500);
  });

  it('is told that there is no group where there is none, and nothing without its credential', async () => {
    const home = await startHome();
    endings.push(home.stop);
    const own = await tabletOf(home.url, home.clock);
    expect(await asks(own, CODE)).toMatchObject({ group: false, used: false });
    expect(await asks({ caller: home.caller() }, CODE)).toEqual({ reason: 'device-unknown' });
    expect((await own.caller.call('POST', '/codes/elsewhere', { body: {} })).status).toBe(400);
  });
});

describe('what a home says to another', () => {
  const question = (home: Home, hashes: readonly string[]): Question => ({
    ...{ service: 'another', at: home.clock.ms, onTests: false, hashes: [...hashes] },
  });
  const send = (home: Home, asked: unknown, proof: string) =>
    home.caller().call('POST', PATH, {
      body: asked,
      headers: { [PROOF_HEADER]: proof },
    });

  it('is yes or no for each hash, what it calls itself, and nothing else at all', async () => {
    const a = await member();
    await uses(a, opened(CODE));
    const keys = groupKeys(secret);
    const hashes = [CODE, 'KQT00000027'].map((code) => keyed(keys.codes, code));
    const asked = question(a.home, hashes);
    const { status, body } = await send(a.home, asked, proofOf(keys.calls, asked));
    expect(status).toBe(200);
    expect(Object.keys(body).sort()).toEqual(['proof', 'service', 'title', 'used']);
    expect(body).toMatchObject({ title: 'Aldermere', used: [true, false] });
  });

  it('is nothing to whoever has not the secret, changes a question, or repeats an old one', async () => {
    const a = await member();
    await uses(a, opened(CODE));
    const keys = groupKeys(secret);
    const asked = question(a.home, [keyed(keys.codes, CODE)]);
    const proof = proofOf(keys.calls, asked);
    const stranger = proofOf(groupKeys(randomBytes(32)).calls, asked);
    const old = { ...asked, at: asked.at - 11 * 60_000 };
    for (const [body, shown] of [
      [asked, stranger],
      [asked, ''],
      [{ ...asked, onTests: true }, proof],
      [{ ...asked, hashes: [keyed(keys.codes, 'KQT00000027')] }, proof],
      [old, proofOf(keys.calls, old)],
      [{ ...asked, hashes: [CODE] }, proof],
      [{}, proof],
    ] as const)
      expect(await send(a.home, body, shown)).toMatchObject({
        ...{ status: 401, body: { reason: 'not-signed-in' } },
      });
    expect((await send(a.home, asked, proof)).status).toBe(200);
  });

  it('is not heard more than sixty times a minute', async () => {
    const a = await member();
    const keys = groupKeys(secret);
    const asked = question(a.home, [keyed(keys.codes, CODE)]);
    const proof = proofOf(keys.calls, asked);
    const statuses: number[] = [];
    for (let at = 0; at < 61; at += 1) statuses.push((await send(a.home, asked, proof)).status);
    expect(statuses.filter((status) => status === 200)).toHaveLength(60);
    expect(statuses.at(-1)).toBe(429);
  });

  it('of a group with another secret is not believed, nor answered', async () => {
    const [a, b] = [await member(), await member({ secret: randomBytes(32) })];
    b.peers.push(new URL(a.home.url));
    await uses(a, opened(CODE));
    expect(await asks(b, CODE)).toMatchObject({ used: false, complete: false });
  });

  it('no list of hashes shows a code without the key, however few codes there may be', () => {
    const [one, other] = [groupKeys(secret), groupKeys(randomBytes(32))];
    const all = Array.from({ length: 1000 }, (_, n) => String(n).padStart(4, '0'));
    const list = new Set(all.map((code) => keyed(one.codes, code)));
    expect(list.size).toBe(1000);
    expect(all.filter((code) => list.has(keyed(other.codes, code)))).toEqual([]);
    // Nor does the key of calls, which every question shows to be known.
    expect(all.filter((code) => list.has(keyed(one.calls, code)))).toEqual([]);
  });
});

describe('a code that two homes used while neither could know', () => {
  it('is found when it can be, holds the test in both, and a senior of each settles it', async () => {
    const [a, b] = await pair();
    const [toA] = a.peers.splice(0);
    const [toB] = b.peers.splice(0);
    await uses(a, opened(CODE, 'testofa'));
    await uses(b, opened(CODE, 'testofb'));
    expect(await b.group.check.run()).toBe(0);
    a.peers.push(toA as URL);
    b.peers.push(toB as URL);
    expect(await b.group.check.run()).toBe(1);
    // The other home was asked about a code of its own, and asks back by itself.
    await expect.poll(() => found(a), { timeout: 5000 }).toHaveLength(1);
    for (const [each, test] of [
      [a, 'testofa'],
      [b, 'testofb'],
    ] as const) {
      const home = await each.reader.read();
      const [finding] = await found(each);
      expect(finding).toMatchObject({ id: `code-elsewhere:${CODE}`, tests: [test] });
      expect(heldBy(home, test as TestId).map(({ id }) => id)).toEqual([finding?.id]);
      const fact = [...home.known.values()].find(({ kind }) => kind === 'code.elsewhere');
      expect(fact).toMatchObject({ by: 'group', private: { title: 'Aldermere' } });
      await each.tablet.sync();
      await uses(each, {
        ...{ kind: 'settled', v: 1, private: { reason: 'We rang. The other tube is put aside.' } },
        data: {
          ...{ finding: finding?.id ?? '', members: [...(finding?.members ?? [])] },
          verdict: 'explained',
        },
      });
    }
    expect(heldBy(await a.reader.read(), 'testofa' as TestId)).toHaveLength(1);
    expect(await a.group.check.run()).toBe(0);
    expect(await b.group.check.run()).toBe(0);
  });

  it('is said once for each home, however often it is asked about', async () => {
    const [a, b] = await pair();
    await uses(a, opened(CODE));
    await uses(b, opened(CODE));
    await b.group.check.run();
    // As after a start, when nothing is remembered of who has answered.
    for (let again = 0; again < 2; again += 1) {
      b.group.check.lookAgain([CODE as Code], 'home-unheard-of');
      await b.group.check.run();
      await a.group.check.run();
    }
    for (const each of [a, b]) {
      const facts = [...(await each.reader.read()).known.values()];
      expect(facts.filter(({ kind }) => kind === 'code.elsewhere')).toHaveLength(1);
    }
  });
});

describe('two whole servers over TLS of their own', () => {
  const data = (name: string) => join(folder, name);
  const secretFile = () => join(folder, 'group-secret.txt');
  async function start(name: string, port: number, ...more: readonly string[]): Promise<Running> {
    const options = optionsFor(
      data(name),
      ...['--port', String(port), '--guide-port', '0', '--home-network', '--host', '127.0.0.1'],
      ...['--group-secret', secretFile(), ...more],
    );
    const running = await serve(options, machineFor([]));
    endings.push(running.stop);
    return running;
  }

  it('share which codes are used, once each trusts the other’s authority', async () => {
    writeFileSync(secretFile(), `${secret.toString('base64url')}\n`, { mode: 0o600 });
    const a = await start('a', 0);
    const toA = ['--group-peer', a.url] as const;
    const trusting = ['--group-authority', join(data('a'), 'tls', 'authority.pem')] as const;
    const b = await start('b', 0, ...toA, ...trusting);
    const distrusting = await start('c', 0, ...toA);
    // The callers of this test take any certificate; the servers do not, whatever this says.
    process.env['NODE_TLS_REJECT_UNAUTHORIZED'] = '0';
    endings.push(() => delete process.env['NODE_TLS_REJECT_UNAUTHORIZED']);
    const clock = { ms: Date.now() };
    const [inA, inB, inC] = await Promise.all(
      [a, b, distrusting].map(({ url, parts }) =>
        tabletOf(url, clock, parts.accounts.settings.service),
      ),
    );
    if (!inA || !inB || !inC) throw new Error('three homes');
    await uses(inA, opened(CODE));
    expect(await asks(inB, CODE)).toMatchObject({ group: true, used: true, complete: true });
    expect(await asks(inC, CODE)).toMatchObject({ group: true, used: false, complete: false });
    // A tablet of B had no signal, and opened it all the same. B's server asks when it starts, too.
    await uses(inB, opened(CODE));
    await b.stop();
    const again = await start('b', 0, ...toA, ...trusting);
    const kept = async () =>
      (await again.parts.ledger.store.opened(0, 1000)).filter(
        ({ kind }) => kind === 'code.elsewhere',
      );
    await expect.poll(kept, { timeout: 10_000 }).toHaveLength(1);
  });
});

describe('what a group is set up with', () => {
  const told = (file: string): string => {
    try {
      readGroupKeys(file);
      return 'taken';
    } catch (error) {
      return startWords(error) ?? 'not told';
    }
  };

  it('the secret comes from a narrow file, long and drawn by chance, and is never an option itself', () => {
    const file = join(folder, 'secret.txt');
    expect(told(file)).toContain('cannot be read');
    writeFileSync(file, 'windlestraw2026\n', { mode: 0o600 });
    expect(told(file)).toContain('tallyround group-secret');
    writeFileSync(file, `${secret.toString('base64url')}\n`);
    expect(told(file)).toBe('taken');
    chmodSync(file, 0o644);
    expect(told(file)).toContain(`chmod 600 ${file}`);
  });

  it('addresses are https, or of this machine, and carry no secret', () => {
    const read = (...peers: readonly string[]) =>
      readOptions(
        ['--group-secret', 's.txt', ...peers.flatMap((peer) => ['--group-peer', peer])],
        {},
        '/home',
      );
    expect(read('https://a.example:8240', 'http://localhost:8240')).toMatchObject({
      options: { group: { secret: '/home/s.txt', authorities: [] } },
    });
    for (const bad of [
      ...['http://a.example', 'a.example', 'https://key@a.example', 'https://a.example/?key=1'],
      ...['https://a.example/path', 'ftp://a.example', 'http://127.0.0.1.example'],
    ])
      expect([bad, read(bad).ok]).toEqual([bad, false]);
    const alone = readOptions(['--group-peer', 'https://a.example'], {}, '/');
    expect(alone.ok ? '' : alone.message).toContain('--group-secret');
    expect(readOptions([], {}, '/')).toMatchObject({ options: { group: undefined } });
  });
});
