import { emptyHome, file, type Home } from '../../care/home.ts';
import type { StaffId } from '../../care/ids.ts';
import { everyMember, type Member, memberOf, workingHere } from '../../care/staff/member.ts';
import { leftByRight, rankOf } from '../../care/staff/rights.ts';
import { dayOf, instantOf, type Zone } from '../../care/time.ts';
import type { LedgerFact } from '../../ledger/fact.ts';
import type { FactId } from '../../ledger/ids.ts';
import type { LedgerStore } from '../../ledger/store.ts';
import { foldName } from '../../procedures/access/pin.ts';
import { ReadOn } from '../service/read-on.ts';
import type { Colleague, Rights } from './rights.ts';

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
  private waiting: LedgerFact[] = [];
  private readonly ledger: ReadOn;

  constructor(private readonly needs: Needs) {
    const empty = () => emptyHome({ zone: needs.zone, policies: [] });
    this.home = empty();
    this.ledger = new ReadOn(needs.store, {
      take: (facts) => this.take(facts.filter((fact) => fact.kind.startsWith('staff.'))),
      anew: () => {
        this.home = empty();
        this.waiting = [];
      },
    });
  }

  colleague(staff: StaffId): Promise<Colleague | undefined> {
    return this.ledger.toEnd(() => this.asColleague(memberOf(this.home, staff)));
  }

  async named(typed: string): Promise<readonly Colleague[]> {
    const wanted = foldName(typed);
    const all = await this.everybody();
    return all.filter(({ name, called }) =>
      [name, called].some((each) => foldName(each) === wanted),
    );
  }

  everybody(): Promise<readonly Colleague[]> {
    return this.ledger.toEnd(() =>
      everyMember(this.home).flatMap((member) => this.asColleague(member) ?? []),
    );
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

  /** What is in doubt is looked at again each time: it counts from when its author has vouched for it. */
  private take(facts: readonly LedgerFact[]): void {
    const all = [...this.waiting, ...facts];
    this.waiting = all.filter(({ id }) => this.needs.inDoubt(id));
    for (const fact of all) if (!this.waiting.includes(fact)) file(this.home, asStored(fact));
  }
}

/** The same fact with the brands of care, which knows no ledger. */
const asStored = (fact: LedgerFact) => fact as unknown as Parameters<typeof file>[1];
