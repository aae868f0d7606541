import { ERASED } from './erased-fact.ts';
import type { LedgerFact } from './fact.ts';
import { openFact } from './fact.ts';
import { concluder } from './findings/conclude.ts';
import * as envelopes from './findings/envelopes.ts';
import type { Finding } from './findings/finding.ts';
import { checkedIn, snapshotParts } from './first-look.ts';
import { CHAIN_START } from './ids.ts';
import { BLOCK } from './marks.ts';
import type { ReplicaOptions } from './replica-options.ts';
import type { Head, Mark } from './store.ts';

/** Facts read at a time: a few of the browser's blocks. */
const PAGE = 4 * BLOCK;
/** Facts folded in one go, before others may go between. */
const RUN = 100;
const START: Mark = { position: 0, chain: CHAIN_START };

/**
 * The state that a fold makes of a store, kept level with it. Nothing is ever rebased: the state is
 * a function of the set of facts, so after whatever happened to the log the driver only gives the
 * fold again what may have another receipt now. Other tabs may write to the same store meanwhile.
 */
export class Replica<State, Fact = LedgerFact> {
  #state: State;
  #envelopes = envelopes.initial();
  #concluder = concluder(this.#envelopes);
  /** Where the state stands in the log, and points behind it by which a rewind is found. */
  #marks: readonly Mark[] = [START];
  #waiting = 0;
  #rewinds = 0;
  /** While a first read lasts: whether a program with this fold has read a fact before. */
  #wasRead: (fact: LedgerFact) => boolean = never;

  private constructor(private readonly options: ReplicaOptions<State, Fact>) {
    this.#state = options.fold.initial();
  }

  static async open<State, Fact>(
    options: ReplicaOptions<State, Fact>,
  ): Promise<Replica<State, Fact>> {
    const replica = new Replica(options);
    await replica.#load();
    return replica;
  }

  get state(): State {
    return this.#state;
  }

  /** Where in the log the state stands; facts that wait are in it too. */
  get at(): Mark {
    return this.#marks[0] ?? START;
  }

  /** What the envelopes show: forks, gaps, clocks and the like. */
  findings(): readonly Finding[] {
    return this.#concluder();
  }

  /** What the server gave a fact when it took it in; undefined while it waits. */
  reached(fact: Parameters<typeof envelopes.reached>[1]): envelopes.Reached | undefined {
    return envelopes.reached(this.#envelopes, fact);
  }

  /** The same for two replicas with the same facts, however each came by them. */
  digest(): string {
    return `${this.options.fold.digest(this.#state)}\n${envelopes.digest(this.#envelopes)}`;
  }

  /** Takes in what has changed in the store. True if anything did. */
  async refresh(): Promise<boolean> {
    const head = await this.options.store.head();
    if (this.#level(head)) return false;
    const erased = await this.#advance();
    // What was erased may stand in the state in words of its own: only a new state is free of it.
    if (erased) await this.#load();
    return true;
  }

  /**
   * Keeps what the next start begins with: the first look, and up to where every fact was read. False
   * when the store has moved on: refresh, then try again.
   */
  save(): Promise<boolean> {
    const { fold, store } = this.options;
    const parts = snapshotParts(fold.first.encode(this.#state), this.#envelopes.unreadable.keys());
    return store.saveSnapshot({ fold: fold.fold, ...this.at, parts });
  }

  /**
   * From the log, always: a snapshot only says which facts need no second look at their shape. Again,
   * if an erasure or a rewind comes while it reads.
   */
  async #load(): Promise<void> {
    const { store, fold } = this.options;
    for (;;) {
      const { size } = await store.erased();
      const { rewinds } = await store.head();
      this.#reset();
      this.#wasRead = (await checkedIn(store, fold.fold)) ?? never;
      await this.#advance();
      const trusted = this.#wasRead !== never;
      this.#wasRead = never;
      if ((await store.erased()).size !== size) continue;
      // The snapshot spoke of the log as it was; in another, other facts may stand at its places.
      if (!trusted || (await store.head()).rewinds === rewinds) return;
    }
  }

  #reset(): void {
    this.#state = this.options.fold.initial();
    this.#setEnvelopes(envelopes.initial());
    this.#marks = [START];
    this.#waiting = 0;
  }

  #setEnvelopes(state: envelopes.Envelopes): void {
    this.#envelopes = state;
    this.#concluder = concluder(state);
  }

  /** Follows the log and what waits until both stand still. True if an erasure came. */
  async #advance(): Promise<boolean> {
    const { store } = this.options;
    let erased = false;
    for (;;) {
      const { rewinds } = await store.head();
      const from = await this.#commonMark();
      if (from.chain !== this.at.chain) this.#goBack(from);
      const before = this.at.chain;
      erased = (await this.#followLog()) || erased;
      const same = rewinds === this.#rewinds && before === this.at.chain && this.#waiting >= 0;
      erased = (await this.#followWaiting(same ? this.#waiting : 0)) || erased;
      const head = await store.head();
      this.#rewinds = rewinds;
      if (this.#level(head)) return erased;
      // Taken back while it was read: facts were given from more than one log, and some as waiting
      // that stand behind the mark again. Only the whole is certain then, and it is very rare.
      if (head.rewinds !== rewinds) this.#goBack(START);
    }
  }

  #level(head: Head): boolean {
    const { chain, pending, rewinds } = head;
    return chain === this.at.chain && pending === this.#waiting && rewinds === this.#rewinds;
  }

  async #commonMark(): Promise<Mark> {
    for (const mark of this.#marks)
      if ((await this.options.store.chainAt(mark.position)) === mark.chain) return mark;
    return START;
  }

  #goBack(to: Mark): void {
    envelopes.cut(this.#envelopes, to.position);
    this.#marks = this.#marks.filter(({ position }) => position < to.position);
    this.#marks = [to, ...this.#marks];
  }

  /** The next page is fetched (and opened, elsewhere) while this one is folded. */
  async #followLog(): Promise<boolean> {
    const { store } = this.options;
    let erased = false;
    let next: Promise<readonly LedgerFact[]> | undefined = store.opened(this.at.position, PAGE);
    while (next) {
      const facts: readonly LedgerFact[] = await next;
      const last = facts.at(-1);
      next = facts.length < PAGE ? undefined : store.opened(last?.position ?? 0, PAGE);
      for (let from = 0; from < facts.length; from += RUN) {
        for (const fact of facts.slice(from, from + RUN)) erased = this.#give(fact) || erased;
        await this.options.breathe?.();
      }
      if (last?.position !== undefined && last.chain !== undefined)
        this.#mark({ position: last.position, chain: last.chain });
    }
    return erased;
  }

  /** Facts that wait come again whenever the log has moved: they may have stood in it before. */
  async #followWaiting(skip: number): Promise<boolean> {
    let erased = false;
    for (let read = skip; ; read += PAGE) {
      const page = await this.options.store.pending({ skip: read, limit: PAGE });
      for (const written of page) erased = this.#give(openFact(written)) || erased;
      this.#waiting = read + page.length;
      if (page.length < PAGE) return erased;
    }
  }

  #give(fact: LedgerFact): boolean {
    envelopes.evolve(this.#envelopes, fact);
    const read = this.options.read(fact, this.#wasRead(fact));
    if (read.ok) this.#state = this.options.fold.evolve(this.#state, read.fact);
    else if (fact.kind !== ERASED) envelopes.unreadable(this.#envelopes, fact.id, read.reason);
    return fact.kind === ERASED;
  }

  #mark(mark: Mark): void {
    this.#marks = thinned([mark, ...this.#marks]);
  }
}

const never = () => false;

/** Newest first, the gaps at least doubling, and always the start. */
function thinned(marks: readonly Mark[]): readonly Mark[] {
  const kept: Mark[] = [];
  let gap = 0;
  for (const mark of marks) {
    const last = kept.at(-1);
    if (last && mark.position > 0 && last.position - mark.position < gap) continue;
    kept.push(mark);
    gap = Math.max(1, gap * 2);
  }
  return kept;
}
