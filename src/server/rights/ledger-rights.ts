import { emptyHome, file, type Home } from '../../care/home.ts';
import type { StaffId } from '../../care/ids.ts';
import { everyMember, type Member, memberOf, workingHere } from '../../care/staff/member.ts';
import { leftByRight, rankOf } from '../../care/staff/rights.ts';
import { dayOf, instantOf, type Zone } from '../../care/time.ts';
import { ERASED } from '../../ledger/erased-fact.ts';
import type { LedgerFact } from '../../ledger/fact.ts';
import type { FactId } from '../../ledger/ids.ts';
import type { LedgerStore } from '../../ledger/store.ts';
import { foldName } from '../../procedures/access/pin.ts';
import type { Colleague, Rights } from './rights.ts';

const PAGE = 5000;

interface Needs {
  /** Whether somebody has still to vouch for a fact (`doubtful.ts`). */
  readonly inDoubt: (fact: FactId) => boolean;
  readonly store: Pick<LedgerStore, 'opened' | 'head'>;
  readonly zone: Zone;
  /** ms since 1970. */
  readonly now: () => number;
}

/**
 * Rights read from the ledger itself: files what is said of staff as it comes in, and concludes by
 * the same functions as a tablet does. A server's log only grows, so it reads on from where it was.
 */
export class LedgerRights implements Rights {
  private home: Home;
  private position = 0;
  /** Up to here erasures were in force before the reading began: what was read came without. */
  private erasedUpTo = 0;
  private waiting: LedgerFact[] = [];
  private reading: Promise<void> = Promise.resolve();

  constructor(private readonly needs: Needs) {
    this.home = this.empty();
  }

  private empty(): Home {
    return emptyHome({ zone: this.needs.zone, policies: [] });
  }

  async colleague(staff: StaffId): Promise<Colleague | undefined> {
    await this.catchUp();
    return this.asColleague(memberOf(this.home, staff));
  }

  async named(typed: string): Promise<readonly Colleague[]> {
    const wanted = foldName(typed);
    const all = await this.everybody();
    return all.filter(({ name, called }) =>
      [name, called].some((each) => foldName(each) === wanted),
    );
  }

  async everybody(): Promise<readonly Colleague[]> {
    await this.catchUp();
    return everyMember(this.home).flatMap((member) => this.asColleague(member) ?? []);
  }

  private asColleague(member: Member): Colleague | undefined {
    const today = dayOf(instantOf(this.needs.now()), this.needs.zone);
    const { id: staff, name, called } = member;
    // A tablet may say what it likes of staff: only what was said by right counts for an account.
    const role = rankOf(this.home, staff);
    const leftOn = leftByRight(this.home, staff);
    return role !== undefined && workingHere({ role, leftOn }, today)
      ? { staff, name, called, role }
      : undefined;
  }

  /** One reader at a time; whoever asks meanwhile waits for a reading that begins after the question. */
  private catchUp(): Promise<void> {
    const next = this.reading.then(() => this.read());
    this.reading = next.catch(() => undefined);
    return next;
  }

  /** What is in doubt is looked at again each time: it counts from when its author has vouched for it. */
  private take(facts: readonly LedgerFact[]): void {
    const all = [...this.waiting, ...facts];
    this.waiting = all.filter(({ id }) => this.needs.inDoubt(id));
    for (const fact of all) if (!this.waiting.includes(fact)) file(this.home, asStored(fact));
  }

  /** A name that was erased is still in what was read before: nothing of that is kept. */
  private anew(): Promise<void> {
    this.home = this.empty();
    this.position = 0;
    this.waiting = [];
    return this.read();
  }

  private async read(): Promise<void> {
    if (this.position === 0) this.erasedUpTo = (await this.needs.store.head()).position;
    this.take([]);
    for (;;) {
      const page = await this.needs.store.opened(this.position, PAGE);
      if (page.some(({ kind }, at) => kind === ERASED && this.position + at >= this.erasedUpTo))
        return this.anew();
      this.take(page.filter((fact) => fact.kind.startsWith('staff.')));
      this.position += page.length;
      if (page.length < PAGE) return;
    }
  }
}

/** The same fact with the brands of care, which knows no ledger. */
const asStored = (fact: LedgerFact) => fact as unknown as Parameters<typeof file>[1];
