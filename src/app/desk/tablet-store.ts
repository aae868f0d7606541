import type { Fact } from '../../care/catalogue.ts';
import type { Home, Service } from '../../care/home.ts';
import type { FactId, StaffId } from '../../care/ids.ts';
import { lookFurther } from '../../care/quality/findings.ts';
import { firstLook } from '../../ledger/first-look.ts';
import type { Fold } from '../../ledger/fold.ts';
import { homeFold, readStored } from '../../procedures/home-fold.ts';
import { sealedDrafts } from '../keeping/sealed-drafts.ts';
import type { SyncState } from '../pieces/page/sync-state.ts';
import { breather } from '../tablet/breathe.ts';
import type { Followed } from '../tablet/followed.ts';
import type { TabletState } from '../tablet/state.ts';
import type { AppendedHere, Tablet } from '../tablet/tablet.ts';
import type { Acted, Desk } from './desk.ts';
import type { DeskStore } from './use-desk-store.ts';

interface Needs {
  readonly tablet: Tablet;
  readonly service: Service;
  readonly title: string;
  readonly monotonic: () => number;
  /** Opens the dialog in which another colleague takes the tablet. */
  readonly hands: () => void;
  /** A fresh random id. */
  readonly draw: () => string;
}

/** A log of fewer facts is read whole before the first screen: it takes no time. */
const SMALL = 4000;
/**
 * The desk of whoever is signed in on a real tablet: each touch is on the disk before the screen moves.
 * In a home of years the screen begins with what happened lately; a touch waits for the whole.
 */
export async function tabletStore(needs: Needs): Promise<DeskStore> {
  const { tablet, service } = needs;
  await keepDrafts(tablet);
  const fold = homeFold(service);
  const early = await glance(tablet, fold);
  const whole = tablet.follow(fold, readStored);
  let followed: Followed<Home, Fact> | undefined;
  const homeNow = (): Home => followed?.get() ?? early ?? fold.initial();
  const listeners = new Set<() => void>();
  const acting = inLine();
  const act: Desk['act'] = (decide) =>
    acting(async () => {
      const touchedAt = Date.now();
      const opened = await whole.catch(() => undefined);
      if (opened === undefined) return { ok: false, trouble: 'storage' };
      const { who, device } = tablet.state.get();
      if (who === undefined || device === undefined) return { ok: false, trouble: 'moved' };
      const doing = { now: tablet.now(), by: who.staff, device: device.id, draw: needs.draw };
      const outcome = decide(opened.get(), doing);
      if (!outcome.ok) return { ok: false, refusal: outcome };
      if (outcome.value.length === 0) return { ok: true, facts: [] };
      const done = await tablet.append(outcome.value, { touchedAt });
      if (!done.ok) return { ok: false, trouble: troubleOf(done) };
      follow(opened);
      await opened.refresh();
      return { ok: true, facts: kept(opened, done.facts) };
    });
  const make = (): Desk => ({
    ...{ act, monotonic: needs.monotonic, home: homeNow(), service: { name: needs.title } },
    me: tablet.state.get().who?.staff ?? ('' as StaffId),
    device: tablet.state.get().device?.id ?? '',
    sync: followed === undefined ? { kind: 'opening' } : syncOf(tablet.state.get()),
    now: () => tablet.now(),
    usedElsewhere: (code) => tablet.usedElsewhere(code),
    reached: (fact) => followed?.reached(fact),
    chainFindings: () => followed?.findings() ?? [],
    verify: () => tablet.verify(),
    lock: () => void tablet.lock(),
    changeHands: needs.hands,
    holdOpen: () => tablet.holdOpen(),
    notices: noticesOf(tablet),
    server: tablet.calls,
    session: tablet.state.get().session,
  });
  let desk = make();
  const renew = () => {
    desk = make();
    for (const tell of [...listeners]) tell();
  };
  const follow = (opened: Followed<Home, Fact>) => {
    if (followed === opened) return;
    followed = opened;
    opened.subscribe(renew);
    renew();
  };
  if (early === undefined) follow(await whole);
  else
    whole.then(
      async (opened) => {
        await concludeInTurns(opened.get(), needs.monotonic);
        follow(opened);
      },
      // Whoever touches is told: `act` waits for the same promise.
      () => undefined,
    );
  tablet.state.subscribe(renew);
  return {
    desk: () => desk,
    subscribe: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
  };
}

/** What somebody typed and did not keep is there again when they are. */
async function keepDrafts(tablet: Tablet): Promise<void> {
  if (tablet.drawer === undefined) return;
  const drafts = sealedDrafts(tablet.drawer, () => Date.parse(tablet.now()));
  const hand = async ({ who }: TabletState) => {
    if (who !== undefined) await drafts.handTo(who.staff);
  };
  tablet.beforeLeaving(() => drafts.flush());
  tablet.state.subscribe((state) => void hand(state));
  await hand(tablet.state.get());
}

/** The findings of years, a few at a time, before a screen asks for all of them at once. */
async function concludeInTurns(home: Home, monotonic: () => number): Promise<void> {
  const breathe = breather(monotonic);
  while (lookFurther(home, 1)) await breathe();
}

/** What holds and what is recent; undefined where the whole is as quickly read. */
async function glance(tablet: Tablet, fold: Fold<Home, Fact>): Promise<Home | undefined> {
  const { ledger: store } = tablet;
  if (store === undefined) return undefined;
  try {
    if ((await store.head()).position < SMALL) return undefined;
    return await firstLook({ store, fold, read: readStored });
  } catch {
    // Following the whole finds out what is wrong, and mends it.
    return undefined;
  }
}

/** One at a time: two touches in a row decide on the home as the first has left it. */
function inLine(): (work: () => Promise<Acted>) => Promise<Acted> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const next = last.then(work);
    last = next.catch(() => undefined);
    return next;
  };
}

const kept = (
  followed: Followed<Home, Fact>,
  written: readonly { readonly id: string }[],
): Fact[] => written.flatMap(({ id }) => followed.get().known.get(id as FactId) ?? []);

function troubleOf(
  done: Exclude<AppendedHere, { ok: true }>,
): 'no-room' | 'clock' | 'storage' | 'moved' {
  switch (done.reason) {
    case 'no-room':
      return 'no-room';
    case 'ask-clock':
      return 'clock';
    case 'locked':
    case 'not-enrolled':
      return 'moved';
    default:
      return 'storage';
  }
}

/** What somebody should know of the tablet itself. */
function noticesOf(tablet: Tablet): Desk['notices'] {
  const { problem, storage, updateReady, waiting } = tablet.state.get();
  // What the server has too may go: it is fetched again. What waits here is nowhere else.
  const mayGo = storage.promised === false && waiting > 0;
  return {
    problem: problem?.kind,
    storage: storage.room !== 'enough' ? 'low' : mayGo ? 'mayGo' : undefined,
    update: updateReady ? () => void tablet.takeUpdate() : undefined,
  };
}

function syncOf({ waiting, online, problem, lastMet }: TabletState): SyncState {
  if (problem !== undefined) return { kind: 'trouble' };
  if (waiting === 0) return { kind: 'nothing' };
  return { kind: online ? 'sending' : 'kept', count: waiting, lastMet };
}
