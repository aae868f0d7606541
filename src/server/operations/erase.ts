import { carriedPolicies } from '../../../policies/carried.ts';
import type { Home } from '../../care/home.ts';
import type { FactId as CareFactId, StaffId } from '../../care/ids.ts';
import { everybody, type Person } from '../../care/people/person.ts';
import {
  type PrivateParts,
  privateOfColleague,
  privateOfPerson,
} from '../../care/record/private-parts.ts';
import { everyMember, type Member, workingHere } from '../../care/staff/member.ts';
import { type Day, dayOf, instantOf } from '../../care/time.ts';
import { erase } from '../../ledger/erasure.ts';
import {
  type FactId,
  type Instant,
  isFactId,
  type StaffId as LedgerStaffId,
} from '../../ledger/ids.ts';
import { foldName } from '../../procedures/access/pin.ts';
import type { Parts } from '../parts.ts';
import { HomeReader } from '../service/home-reader.ts';
import type { World } from '../service/open.ts';
import { withService } from './existing.ts';

/**
 * Why a private part is erased. `retention`: the time is over for which the service's own policy keeps it.
 * `asked-for`: they, or whoever speaks for them, asked, and the service agreed. `wrong-entry`: it should
 * never have been written. `ordered`: a law or a court wants it gone.
 */
export const erasureReasons = ['retention', 'asked-for', 'wrong-entry', 'ordered'] as const;
export type ErasureReason = (typeof erasureReasons)[number];

/** Whose, by name or id; or which single facts, by their ids. */
export type ErasedWhat =
  | { readonly of: 'person' | 'colleague'; readonly who: string }
  | { readonly of: 'facts'; readonly ids: readonly string[] };

export interface ErasureAsked {
  readonly what: ErasedWhat;
  readonly reason: ErasureReason;
  /** Name or id of the manager who decides. */
  readonly manager: string;
}

/** What would go, or has gone: how many of each kind, and nothing of what they say. */
export interface ErasurePlan {
  readonly ok: true;
  readonly manager: string;
  readonly kinds: ReadonlyMap<string, number>;
  readonly targets: readonly FactId[];
  /** Left as they are: they may be about somebody else too. */
  readonly perhaps: readonly FactId[];
}

export type ErasureRefused =
  | {
      readonly ok: false;
      readonly reason: 'unknown' | 'not-manager' | 'unknown-fact';
      readonly detail: string;
    }
  /** Several answer to the name: say which by id. */
  | { readonly ok: false; readonly reason: 'several'; readonly ids: readonly string[] }
  /** Lives or works here: only single facts may go. */
  | { readonly ok: false; readonly reason: 'still-here' | 'nothing' };

/** Shows what would go; erases it only where `now` says so. Beside the server or without. */
export const eraseParts = (
  folder: string,
  world: World,
  asked: ErasureAsked,
  { now }: { readonly now: boolean },
): Promise<ErasurePlan | ErasureRefused> =>
  withService(folder, world, async (parts) => {
    const plan = await planned(parts, asked);
    if (!plan.ok || !now) return plan;
    const writer = {
      by: plan.by as string as LedgerStaffId,
      now: instantOf(parts.now()) as string as Instant,
      salt: () => parts.random(16),
    };
    const done = await erase(parts.ledger, { targets: plan.targets, reason: asked.reason }, writer);
    if (!done.ok) throw new Error(`nothing was erased: ${done.reason}`);
    return plan;
  });

/** Somebody who has gone, and of whom something private is still here. */
export interface Gone {
  readonly of: 'person' | 'colleague';
  readonly id: string;
  /** The day they went. */
  readonly on: Day;
  readonly parts: number;
}

/** Who has gone and could be erased, the longest gone first. Without a name: their page has it. */
export const goneWithParts = (folder: string, world: World): Promise<readonly Gone[]> =>
  withService(folder, world, async (parts) => {
    const { home, today } = await looked(parts);
    const people = everybody(home)
      .filter((person) => hasGone(person, today))
      .map(({ id, whereabouts: { since: on = today } }) => {
        const { theirs } = privateOfPerson(home, id);
        return { of: 'person', id, on, parts: theirs.length } as const;
      });
    const colleagues = everyMember(home)
      .filter((member) => member.leftOn !== undefined && !workingHere(member, today))
      .map(({ id, leftOn: on = today }) => {
        const { theirs } = privateOfColleague(home, id);
        return { of: 'colleague', id, on, parts: theirs.length } as const;
      });
    return [...people, ...colleagues]
      .filter((gone) => gone.parts > 0)
      .sort((a, b) => (a.on === b.on ? (a.id < b.id ? -1 : 1) : a.on < b.on ? -1 : 1));
  });

async function looked({ ledger, accounts, now }: Parts): Promise<{ home: Home; today: Day }> {
  const { zone } = accounts.settings;
  const reader = new HomeReader(ledger.store, { zone, policies: carriedPolicies() });
  return { home: await reader.read(), today: dayOf(instantOf(now()), zone) };
}

async function planned(
  parts: Parts,
  { what, manager }: ErasureAsked,
): Promise<(ErasurePlan & { readonly by: StaffId }) | ErasureRefused> {
  const decides = await managerNamed(parts, manager);
  if (!decides.ok) return decides;
  const { home, today } = await looked(parts);
  const found = what.of === 'facts' ? single(home, what.ids) : whole(home, what, today);
  if (!found.ok) return found;
  const { theirs, perhaps } = found;
  if (theirs.length === 0) return { ok: false, reason: 'nothing' };
  const kinds = new Map<string, number>();
  for (const { kind } of theirs) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  const ids = (facts: PrivateParts['theirs']) => facts.map(({ id }) => id as string as FactId);
  return {
    ...{ ok: true, by: decides.one.staff, manager: decides.one.name, kinds },
    ...{ targets: ids(theirs), perhaps: ids(perhaps) },
  };
}

type One<T> = { readonly ok: true; readonly one: T } | ErasureRefused;

function theOne<T>(found: readonly T[], id: (each: T) => string, detail: string): One<T> {
  const [one, ...more] = found;
  if (one === undefined) return { ok: false, reason: 'unknown', detail };
  return more.length === 0
    ? { ok: true, one }
    : { ok: false, reason: 'several', ids: found.map(id) };
}

async function managerNamed(
  { rights }: Parts,
  who: string,
): Promise<One<{ readonly staff: StaffId; readonly name: string }>> {
  const byId = await rights.colleague(who as StaffId);
  const found = theOne(byId ? [byId] : await rights.named(who), ({ staff }) => staff, who);
  if (!found.ok || found.one.role === 'manager') return found;
  return { ok: false, reason: 'not-manager', detail: who };
}

type Found = ({ readonly ok: true } & PrivateParts) | ErasureRefused;

/** All that is private about somebody, who must have gone. */
function whole(
  home: Home,
  { of, who }: { readonly of: 'person' | 'colleague'; readonly who: string },
  today: Day,
): Found {
  const meant = ({ id, name }: Person | Member) =>
    id === who || (name !== '' && foldName(name) === foldName(who));
  if (of === 'person') {
    const found = theOne(everybody(home).filter(meant), ({ id }) => id, who);
    if (!found.ok) return found;
    if (!hasGone(found.one, today)) return { ok: false, reason: 'still-here' };
    return { ok: true, ...privateOfPerson(home, found.one.id) };
  }
  const found = theOne(everyMember(home).filter(meant), ({ id }) => id, who);
  if (!found.ok) return found;
  if (workingHere(found.one, today)) return { ok: false, reason: 'still-here' };
  return { ok: true, ...privateOfColleague(home, found.one.id) };
}

/** A day of leaving may be written down before it has come. */
const hasGone = ({ whereabouts }: Person, today: Day): boolean =>
  whereabouts.where === 'left' && whereabouts.since <= today;

/** All of them, or none: a slip in one id is told before anything goes. */
function single(home: Home, ids: readonly string[]): Found {
  const theirs = [];
  for (const id of new Set(ids)) {
    const fact = isFactId(id) ? home.known.get(id as string as CareFactId) : undefined;
    if (fact === undefined) return { ok: false, reason: 'unknown-fact', detail: id };
    if (fact.private !== undefined) theirs.push(fact);
  }
  return { ok: true, theirs, perhaps: [] };
}
