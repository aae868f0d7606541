import type { LedgerFact } from '../../ledger/fact.ts';
import type { Reached } from '../../ledger/findings/envelopes.ts';
import type { Finding } from '../../ledger/findings/finding.ts';
import type { DeviceId, FactId } from '../../ledger/ids.ts';
import { Replica } from '../../ledger/replica.ts';
import type { ReplicaOptions } from '../../ledger/replica-options.ts';
import type { Readable } from './observable.ts';

/**
 * The state that a fold makes of the tablet's ledger, kept level with it. The state may be the same
 * object changed in place: listeners are told whenever it may have changed.
 */
export class Followed<State, Fact = LedgerFact> implements Readable<State> {
  private readonly listeners = new Set<(state: State) => void>();
  private work: Promise<unknown> = Promise.resolve();

  private constructor(private readonly replica: Replica<State, Fact>) {}

  static async open<State, Fact>(
    options: ReplicaOptions<State, Fact>,
  ): Promise<Followed<State, Fact>> {
    return new Followed(await Replica.open(options));
  }

  get(): State {
    return this.replica.state;
  }

  findings(): readonly Finding[] {
    return this.replica.findings();
  }

  /** When and through which device a fact reached the server; undefined while it waits. */
  reached(fact: {
    readonly id: string;
    readonly device: string;
    readonly seq: number;
  }): Reached | undefined {
    const { id, device, seq } = fact;
    return this.replica.reached({ id: id as FactId, device: device as DeviceId, seq });
  }

  subscribe(listener: (state: State) => void): () => void {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  }

  /** Takes in what has changed and tells everybody. One refresh at a time. */
  refresh(): Promise<void> {
    return this.inTurn(async () => {
      if (await this.replica.refresh())
        for (const listener of [...this.listeners]) listener(this.replica.state);
    });
  }

  /** Keeps the state, so that the next start need not count everything again. */
  save(): Promise<void> {
    return this.inTurn(async () => {
      if (await this.replica.save()) return;
      await this.replica.refresh();
      await this.replica.save();
    });
  }

  private inTurn(work: () => Promise<void>): Promise<void> {
    const next = this.work.then(work);
    this.work = next.catch(() => undefined);
    return next;
  }
}
