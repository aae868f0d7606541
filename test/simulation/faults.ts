import type { Home } from '../../src/care/home.ts';
import type { Confirmed, Written } from '../../src/ledger/fact.ts';
import type { FactId } from '../../src/ledger/ids.ts';
import type { Change, Committed, LedgerStore, Mark, Snapshot } from '../../src/ledger/store.ts';
import { MemoryStore } from '../../src/ledger/stores/memory/store.ts';
import type { SyncAnswer, SyncRequest } from '../../src/ledger/sync-message.ts';
import { careModel } from './care-model.ts';
import { type Bags, concludeWith, homeModel, settlementsOf, verdictOn } from './home-model.ts';
import type { AnyModel, Model } from './model.ts';

/** A way to build the ledger wrong, or right. Every planted fault must be caught by an invariant. */
export interface Fault {
  readonly name: string;
  readonly model: AnyModel;
  readonly store: typeof MemoryStore;
  /** Answers before the real server does. */
  readonly gate?: (store: LedgerStore, request: SyncRequest) => Promise<SyncAnswer | undefined>;
  /** After an answer to a push came, before the reply is applied. */
  readonly acknowledged?: (store: MemoryStore, ids: readonly FactId[]) => void;
  /** A restored server does not look at the memory of erasures. */
  readonly silentRestore?: true;
  /** A server sends facts to whoever asks, whatever its format. */
  readonly anyFormat?: true;
}

export const sound: Fault = { name: 'none', model: homeModel, store: MemoryStore };
/** The same, with the real catalogue, procedures and fold in the model's place. */
export const soundCare: Fault = { ...sound, model: careModel };

const withModel = (name: string, changes: Partial<Model<Bags>>): Fault => ({
  ...sound,
  name,
  model: { ...homeModel, ...changes },
});

/** A wrong judgement that the recount shares, so that only what people were shown can tell. */
function misjudging(
  name: string,
  changes: Pick<Model<Bags>, 'conclude'> & Partial<Model<Bags>>,
): Fault {
  const { fold } = { ...homeModel, ...changes };
  const recount: Model<Bags>['recount'] = (facts) =>
    changes.conclude(facts.reduce(fold.evolve, fold.initial()));
  return withModel(name, { recount, ...changes });
}
const withStore = (name: string, store: typeof MemoryStore): Fault => ({ ...sound, name, store });

/** Keeps only what came last for a key, whatever "last" is on this replica. */
const orderSensitive = withModel('order-sensitive fold', {
  fold: {
    ...homeModel.fold,
    evolve: (bags, fact) => {
      const state = homeModel.fold.evolve(bags, fact);
      for (const bag of state.values()) if (bag.size > 3) bag.delete([...bag.keys()][0] as FactId);
      return state;
    },
  },
});

const lastWriter = misjudging('last writer wins', {
  conclude: (bags) =>
    concludeWith(bags, (all, finding, members) => {
      const last = settlementsOf(all, finding).at(-1)?.[1];
      return last && members.every((id) => last.members.includes(id)) ? last.verdict : undefined;
    }),
});

const withoutMembers = misjudging('settling without members', {
  conclude: (bags) =>
    concludeWith(bags, (all, finding) => {
      const settlements = settlementsOf(all, finding);
      const verdicts = new Set(settlements.map(([, { verdict }]) => verdict));
      return verdicts.size === 1 ? settlements[0]?.[1].verdict : undefined;
    }),
});

const holdsNothing = withModel('a clash does not hold', {
  conclude: (bags) => ({ ...concludeWith(bags, verdictOn), held: [] }),
});

const secretsDecide = misjudging('what is private decides', {
  conclude: homeModel.conclude,
  fold: {
    ...homeModel.fold,
    evolve: (bags, fact) => {
      const hidden = fact.hidden === true || fact.private !== undefined;
      if (hidden && fact.private === undefined) return bags;
      const more = hidden
        ? { ...fact, data: { ...fact.data, test: fact.data['person'] ?? '', code: 'c0' } }
        : fact;
      return homeModel.fold.evolve(bags, hidden ? { ...more, kind: 'test.labelled' } : more);
    },
  },
});

/** Waits for a fact's predecessor, as many a queue does. */
const gatesOrder: Fault = {
  ...sound,
  name: 'server refuses gaps and forks',
  async gate(store, { push }) {
    for (const [index, { body }] of push.entries()) {
      const { prev, seq, device } = JSON.parse(body) as {
        prev: FactId;
        seq: number;
        device: string;
      };
      const sent = push
        .slice(0, index)
        .some((other) => other.body.includes(`"device":"${device}"`));
      if (seq === 1 || sent || (await store.known([prev])).size > 0) continue;
      return { ok: false, status: 400, reason: 'bad-seq', detail: 'no predecessor', index };
    }
    return undefined;
  },
};

class ForgetsOnAcknowledgement extends MemoryStore {
  drop(ids: readonly FactId[]): void {
    for (const id of ids) this.at.pending.delete(id);
  }
}

const deletesOnAcknowledgement: Fault = {
  ...withStore('pending deleted on acknowledgement', ForgetsOnAcknowledgement),
  acknowledged: (store, ids) => {
    if (store instanceof ForgetsOnAcknowledgement) store.drop(ids);
  },
};

/** Writes where the reply says, and does not look whether the cursor still is where it was. */
class NoCursorCheck extends MemoryStore {
  override commitNow(change: Change): Committed {
    const { log } = change;
    const first = log?.append[0];
    if (!log || log.expect === this.headNow().chain || !first) return super.commitNow(change);
    const position = Math.min(first.position - 1, this.headNow().position);
    const chain = this.chainNow(position);
    if (chain === undefined) return super.commitNow(change);
    const append = log.append.slice(position - first.position + 1);
    return super.commitNow({
      ...change,
      log: { expect: this.headNow().chain, rewindTo: { position, chain }, append },
    });
  }
}

class NoHeadCheck extends MemoryStore {
  override commitNow(change: Change): Committed {
    const { own, ...rest } = change;
    if (!own) return super.commitNow(change);
    return super.commitNow({
      ...rest,
      own: { expect: this.headNow().device ?? null, head: own.head },
    });
  }
}

/** Neither lowers a snapshot nor compares its chain. */
class SnapshotStays extends MemoryStore {
  protected override rewind(to: Mark): void {
    const before = new Map(this.at.snapshots);
    super.rewind(to);
    for (const [fold, snapshot] of before) this.at.snapshots.set(fold, snapshot);
  }

  override snapshot(fold: number): Promise<Snapshot | undefined> {
    const kept = this.at.snapshots.get(fold);
    const chain = kept && this.chainNow(kept.position);
    return Promise.resolve(chain === undefined ? undefined : ({ ...kept, chain } as Snapshot));
  }
}

/** After a rewind only a device's own facts are sent again. */
class NoCarrying extends MemoryStore {
  protected override wait(written: Written): void {
    const own = `"device":"${this.at.device?.id ?? ''}"`;
    if (written.body.includes(own)) super.wait(written);
  }
}

class SnapshotNotErased extends MemoryStore {
  protected override erase(ids: readonly FactId[]): void {
    const before = new Map(this.at.snapshots);
    super.erase(ids);
    for (const [fold, snapshot] of before) this.at.snapshots.set(fold, snapshot);
  }
}

/** Scrubs what is here, and takes it in again when it comes again. */
class ErasureForgotten extends MemoryStore {
  protected override erase(ids: readonly FactId[]): void {
    super.erase(ids);
    this.at.erased.clear();
  }
}

/** A fact that comes back in the log is left waiting too. */
class NeverDone extends MemoryStore {
  protected override append(entry: Confirmed): void {
    const waiting = this.at.pending.get(entry.id);
    super.append(entry);
    if (waiting) this.at.pending.set(entry.id, waiting);
  }
}

/** The real home, with each bag in the order in which its facts came. */
const arrivalOrder: Fault = {
  ...soundCare,
  name: 'real bags in order of arrival',
  model: {
    ...careModel,
    fold: {
      ...careModel.fold,
      digest: (home: Home) => `${careModel.fold.digest(home)} ${[...home.known.keys()].join(' ')}`,
    },
  },
};

/** Two results for one code go unnoticed. */
const blindToResults: Fault = {
  ...soundCare,
  name: 'a real finding is missed',
  model: {
    ...careModel,
    conclude: (home: Home) => {
      const { findings, held } = careModel.conclude(home);
      return { held, findings: findings.filter(({ id }) => !id.startsWith('two-results')) };
    },
  },
};

export const planted: readonly Fault[] = [
  gatesOrder,
  deletesOnAcknowledgement,
  lastWriter,
  withStore('no cursor compare', NoCursorCheck),
  withoutMembers,
  withStore('snapshot not lowered', SnapshotStays),
  withStore('no carrying', NoCarrying),
  withStore('snapshot not erased', SnapshotNotErased),
  withStore('erasure not remembered', ErasureForgotten),
  withStore('no head check', NoHeadCheck),
  orderSensitive,
  { ...sound, name: 'silent restore', silentRestore: true },
  { ...sound, name: 'facts to any format', anyFormat: true },
  holdsNothing,
  secretsDecide,
  withStore('waiting never ends', NeverDone),
  arrivalOrder,
  blindToResults,
];
