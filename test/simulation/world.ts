import { createHash } from 'node:crypto';
import { enrol } from '../../src/ledger/enrol.ts';
import { targetsOf } from '../../src/ledger/erased-fact.ts';
import type { Body } from '../../src/ledger/fact.ts';
import type { Hash } from '../../src/ledger/hash.ts';
import {
  CHAIN_START,
  type ChainValue,
  type DeviceId,
  deviceId,
  type FactId,
  type Instant,
  instantOf,
  type ServiceId,
  type StaffId,
} from '../../src/ledger/ids.ts';
import { createLock } from '../../src/ledger/lock.ts';
import type { Replica } from '../../src/ledger/replica.ts';
import { serverSeal } from '../../src/ledger/server-seal.ts';
import type { Change, LedgerStore } from '../../src/ledger/store.ts';
import type { MemoryStore } from '../../src/ledger/stores/memory/store.ts';
import type { LedgerServer } from '../../src/ledger/sync-answer.ts';
import type { SyncAnswer, SyncReply, SyncRequest } from '../../src/ledger/sync-message.ts';
import { Chance } from './chance.ts';
import type { Fault } from './faults.ts';
import type { AnyModel } from './model.ts';
import type { Process } from './process.ts';

const service = 'fern-house' as ServiceId;
const START = Date.parse('2026-11-25T06:00:00.000Z');

/** A broken invariant. `step` is told by whoever runs the seed. */
export class Violation extends Error {
  constructor(
    readonly invariant: string,
    readonly detail: string,
  ) {
    super(`invariant ${invariant}: ${detail}`);
  }
}

/** A program running on a tablet: what is on one screen, and at most one thing it is doing. */
export interface Tab {
  readonly tablet: Tablet;
  /** The tablet's store, one awaited call at a time. */
  readonly port: LedgerStore;
  replica: Replica<unknown, unknown> | undefined;
  process: Process;
  /** What its author has been shown of the settlement being written. */
  shown: ReadonlySet<FactId>;
}

export interface Tablet {
  readonly name: string;
  store: MemoryStore;
  /** Format of its program. */
  format: number;
  /** ms that its own clock is wrong by. */
  clockError: number;
  tabs: Tab[];
  /** Ids held when last looked at: none may ever go. */
  held: Set<FactId>;
  /** A copy of its disk, taken some time ago. */
  copy: MemoryStore | undefined;
}

export interface ServerState {
  store: MemoryStore;
  format: number;
  ledger: LedgerServer;
  /** The memory of erasures, outside all backups. */
  readonly side: Set<FactId>;
  readonly retired: Set<DeviceId>;
  processes: Process[];
  held: Set<FactId>;
  backup: readonly string[] | undefined;
  rawCopy: MemoryStore | undefined;
}

export type Message =
  | {
      readonly to: 'server';
      readonly from: Tab;
      readonly request: SyncRequest;
      readonly answer: Answer;
    }
  | {
      readonly to: 'tab';
      readonly from: Tab;
      readonly request: SyncRequest;
      readonly answer: Answer;
      readonly reply: SyncAnswer;
    };

export interface Answer {
  readonly resolve: (answer: SyncAnswer) => void;
  readonly reject: (error: Error) => void;
}

/** The network's doing, or a retired device: the round fails and is tried again some day. */
export class NoAnswer extends Error {}

/** SHA-256 by the platform; the same text is only counted once a run. */
function rememberingHash(): Hash {
  const known = new Map<string, string>();
  return (text) => {
    let hash = known.get(text);
    if (hash === undefined)
      known.set(text, (hash = createHash('sha256').update(text).digest('base64url')));
    return hash;
  };
}

/** Everything there is in one run. */
const seal = serverSeal(new Uint8Array(32).fill(7));

export class World {
  readonly chance: Chance;
  readonly hash = rememberingHash();
  now = START;
  readonly tablets: Tablet[] = [];
  readonly server: ServerState;
  network: Message[] = [];
  /** Late copies of replies, to be applied whenever. */
  late: { readonly tablet: Tablet; readonly request: SyncRequest; readonly reply: SyncReply }[] =
    [];
  /** Devices whose store was put back or copied: only they may fork. */
  readonly tampered = new Set<DeviceId>();
  /** What the author of a settlement had been shown. */
  readonly shown = new Map<FactId, ReadonlySet<FactId>>();
  /** Every link any server ever made: chain value to fact and link before. */
  readonly links = new Map<ChainValue, { readonly id: FactId; readonly prev: ChainValue }>();
  facts = 0;
  /** Found inside a procedure; thrown at the end of the step. */
  failure: Violation | undefined;
  private devices = 0;

  private constructor(
    seed: number,
    readonly fault: Fault,
    readonly model: AnyModel,
  ) {
    this.chance = new Chance(seed);
    const store = this.newStore(1);
    this.server = {
      store,
      format: 1,
      ledger: this.ledgerOn(store),
      side: new Set(),
      retired: new Set(),
      processes: [],
      held: new Set(),
      backup: undefined,
      rawCopy: undefined,
    };
  }

  static async create(seed: number, fault: Fault): Promise<World> {
    const world = new World(seed, fault, fault.model);
    await enrol(world.server.store, world.newDevice('server'));
    for (let n = 0; n < 2 + world.chance.below(2); n++) await world.addTablet();
    return world;
  }

  newStore(format: number): MemoryStore {
    return this.fault.store.open(service, format);
  }

  newDevice(sort: 'server' | 'tablet'): DeviceId {
    this.devices += 1;
    return deviceId(sort, new Uint8Array([this.devices >> 8, this.devices & 255, 0, 0, 0, 0]));
  }

  ledgerOn(store: MemoryStore): LedgerServer {
    const rememberErased = (ids: readonly FactId[]) => {
      for (const id of ids) this.server.side.add(id);
      return Promise.resolve();
    };
    return { store, hash: this.hash, lock: createLock(), rememberErased, seal };
  }

  async addTablet(from?: Tablet): Promise<Tablet> {
    const tablet: Tablet = {
      name: `tablet ${this.tablets.length + 1}`,
      store: from ? from.store.copy() : this.newStore(this.server.format),
      format: from?.format ?? this.server.format,
      clockError: from?.clockError ?? 0,
      tabs: [],
      held: new Set(from?.held),
      copy: undefined,
    };
    if (!from) await enrol(tablet.store, this.newDevice('tablet'));
    this.tablets.push(tablet);
    return tablet;
  }

  get time(): Instant {
    const now = instantOf(this.now);
    if (now === undefined) throw new RangeError('the end of time');
    return now;
  }

  deviceNow(tablet: Tablet): number {
    return this.now + tablet.clockError;
  }

  salt = (): Uint8Array => this.chance.bytes(16);
  readonly boss = 'boss' as StaffId;

  /** A program that knows other facts has another fold: a snapshot of the old one is of no use. */
  replicaOptions(store: LedgerStore, format: number) {
    const read = this.model.read(format);
    return { store, fold: { ...this.model.fold, fold: format }, read };
  }

  get tabs(): readonly Tab[] {
    return this.tablets.flatMap(({ tabs }) => tabs);
  }

  get processes(): readonly Process[] {
    const ofTabs = this.tabs.map(({ process }) => process);
    return [...ofTabs, ...this.server.processes].filter((process) => process.alive);
  }

  /** Called for every commit on a server: the history of links grows. */
  noteLinks(change: Change): void {
    let prev = change.log?.expect ?? CHAIN_START;
    for (const { chain, id } of change.log?.append ?? []) {
      this.links.set(chain, { id, prev });
      prev = chain;
    }
  }

  bodyOf(text: string): Body {
    return JSON.parse(text) as Body;
  }

  targetsIn(text: string): readonly FactId[] {
    return targetsOf(this.bodyOf(text));
  }
}
