import { type BackupLine, backupLines } from '../../src/ledger/backup.ts';
import { erase, eraseForgotten } from '../../src/ledger/erasure.ts';
import { instantOf } from '../../src/ledger/ids.ts';
import { restore } from '../../src/ledger/restore.ts';
import type { Change, LedgerStore } from '../../src/ledger/store.ts';
import type { MemoryStore } from '../../src/ledger/stores/memory/store.ts';
import { answerSync, type LedgerServer } from '../../src/ledger/sync-answer.ts';
import type { SyncAnswer } from '../../src/ledger/sync-message.ts';
import { overriding, Process, stepped } from './process.ts';
import { asViolation } from './tablet.ts';
import { type Message, NoAnswer, Violation, type World } from './world.ts';

function startOnServer(
  world: World,
  title: string,
  work: (server: LedgerServer) => Promise<void>,
): void {
  const process = new Process(`server ${title}`);
  world.server.processes = world.server.processes.filter(({ alive }) => alive);
  world.server.processes.push(process);
  const { store, ledger } = world.server;
  const port = noting(
    world,
    stepped(store, () => process),
  );
  work({ ...ledger, store: port }).then(
    () => {
      process.ended = true;
    },
    (error: unknown) => {
      process.ended = true;
      world.failure ??= asViolation(error);
    },
  );
}

/** A server's store whose every new link is noted in the world's history. */
function noting(world: World, store: LedgerStore): LedgerStore {
  const commit = async (change: Change) => {
    const done = await store.commit(change);
    if (done.ok) world.noteLinks(change);
    return done;
  };
  return overriding(store, { commit });
}

/** The server as it is before it lets anybody in, or in quiet: nothing waits. */
export const directServer = (world: World): LedgerServer => ({
  ...world.server.ledger,
  store: noting(world, world.server.store),
});

/** A request has reached the server. */
export function serve(world: World, message: Extract<Message, { to: 'server' }>): void {
  const { request, from, answer } = message;
  if (world.server.retired.has(request.device)) {
    answer.reject(new NoAnswer('retired'));
    return;
  }
  startOnServer(world, 'answers', async (server) => {
    const reply = await answerNow(world, server, request);
    world.network.push({ to: 'tab', from, request, answer, reply });
  });
}

export async function answerNow(
  world: World,
  server: LedgerServer,
  request: Extract<Message, { to: 'server' }>['request'],
): Promise<SyncAnswer> {
  const { fault, time } = world;
  const gated = await fault.gate?.(server.store, request);
  if (gated) return gated;
  const asked = fault.anyFormat ? { ...request, format: world.server.format } : request;
  const moment = {
    now: time,
    via: request.device,
    lease: instantOf(world.now + 6e8) ?? time,
    revoked: [],
  };
  const answer = await answerSync(server, asked, moment);
  if (answer.ok && answer.reply.facts.length > 0 && request.format < world.server.format)
    throw new Violation(
      '12',
      `a program of format ${request.format} was sent facts of ${world.server.format}`,
    );
  return answer;
}

/** Every procedure of the server ends where it stands; what is on its disk stays. */
export async function crash(world: World, disk: MemoryStore = world.server.store): Promise<void> {
  const { server } = world;
  for (const process of server.processes) process.kill();
  server.processes = [];
  server.store = disk;
  server.ledger = world.ledgerOn(disk);
  await disk.commit({ format: server.format });
  if (!world.fault.silentRestore)
    await eraseForgotten(directServer(world), [...server.side], writer(world));
}

const writer = (world: World) => ({ by: world.boss, now: world.time, salt: world.salt });

/** A manager erases some of the private parts there are. */
export function eraseSome(world: World): void {
  startOnServer(world, 'erases', async (server) => {
    const log = await server.store.confirmed(0, 100_000);
    const targets = world.chance
      .some(
        log.filter((entry) => entry.private !== undefined),
        0.4,
      )
      .map(({ id }) => id);
    if (targets.length === 0) return;
    const done = await erase(server, { targets, reason: 'retention' }, writer(world));
    if (!done.ok) throw new Violation('12', `an erasure was refused: ${done.reason}`);
  });
}

export async function backUp(world: World): Promise<void> {
  const lines: string[] = [];
  for await (const line of backupLines(world.server.store, { made: world.time, private: true }))
    lines.push(line);
  world.server.backup = lines;
}

/** A new server from the last backup, by the proper way. */
export async function restoreBackup(world: World): Promise<void> {
  const { server } = world;
  if (!server.backup) return;
  const disk = world.newStore(server.format);
  for (const process of server.processes) process.kill();
  server.processes = [];
  server.store = disk;
  server.ledger = world.ledgerOn(disk);
  server.held = new Set();
  const lines = readAgain(server.backup);
  const remembered = world.fault.silentRestore ? [] : [...server.side];
  const device = world.newDevice('server');
  const done = await restore(directServer(world), lines, {
    remembered,
    device,
    writer: writer(world),
  });
  if (!done.ok) throw new Violation('4', `a backup was refused: ${done.reason} ${done.detail}`);
}

async function* readAgain(lines: readonly string[]): AsyncGenerator<BackupLine> {
  yield* await Promise.resolve(lines.map((line) => JSON.parse(line) as BackupLine));
}

/** Somebody puts an old copy of the file back and starts the server. */
export async function restoreRaw(world: World): Promise<void> {
  const { server } = world;
  if (!server.rawCopy) return;
  const { device } = await server.store.head();
  if (device) world.tampered.add(device.id);
  const old = server.rawCopy.copy();
  const before = (await old.head()).device;
  if (before) world.tampered.add(before.id);
  server.held = new Set();
  await crash(world, old);
}
