import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { demoHome } from '../../../demo/home.ts';
import { Pen } from '../../../demo/pen.ts';
import windlestraw from '../../../policies/windlestraw-house-1.json';
import type { Fact, NewFact } from '../../care/catalogue.ts';
import type { Service } from '../../care/home.ts';
import { file } from '../../care/home.ts';
import type { StaffId } from '../../care/ids.ts';
import { idFromBytes } from '../../care/ids.ts';
import { readPolicy } from '../../care/policy/policy.ts';
import type { Instant } from '../../care/time.ts';
import { after, instantOf } from '../../care/time.ts';
import { openFact } from '../../ledger/fact.ts';
import type { DeviceId, ServiceId } from '../../ledger/ids.ts';
import { base64url, CHAIN_START, NO_FACT } from '../../ledger/ids.ts';
import { policyDigest } from '../../procedures/policy-digest.ts';
import type { Desk } from '../desk/desk.ts';
import type { DeskStore } from '../desk/use-desk-store.ts';

const hash = (text: string) => base64url(sha256(utf8ToBytes(text)));
const random = (count: number) => crypto.getRandomValues(new Uint8Array(count));

/** The memory desk, and what can be turned from outside it. */
export interface Rehearsal extends DeskStore {
  /** It is this moment now; the clock goes on from here. */
  readonly setClock: (at: Instant) => void;
  /** Another colleague takes the tablet. */
  readonly signIn: (me: StaffId) => void;
  /** As while older records are still being read, or no longer. */
  readonly setOpening: (opening: boolean) => void;
  /** A fact that another tablet wrote comes in, decided by its own lights. */
  readonly arrive: (fact: NewFact, by: StaffId) => Fact;
}

/**
 * A desk on the demo home, in memory alone: the whole app without a server, for looking at screens.
 * Nothing is kept; reload the page and the morning starts again.
 */
export function memoryDesk({
  me,
  start,
}: {
  readonly me: StaffId;
  readonly start: Instant;
}): Rehearsal {
  const read = readPolicy(windlestraw);
  if (!read.ok) throw new Error(`${read.where}: ${read.what}`);
  const service: Service = { zone: 'Europe/London', policies: [read.policy] };
  const device = { id: 'S0000001' as DeviceId, seq: 0, last: NO_FACT };
  const head = {
    ...{ service: 'windlestraw' as ServiceId, format: 1, position: 0, chain: CHAIN_START },
    ...{ device, pending: 0, rewinds: 0 },
  };
  const demo = demoHome(
    service,
    { head, device, hash },
    { seed: 7, now: start, policyDigest: policyDigest(read.policy, hash) },
  );
  const tablet = { id: 'T0000001' as DeviceId, seq: 0, last: NO_FACT };
  const pen = new Pen(
    service,
    { head, device: tablet, hash, salt: () => random(16), draw: () => idFromBytes(random(12)) },
    { now: start, by: me },
  );
  for (const written of demo.facts) file(pen.home, openFact(written) as never);
  let clock = { from: start, set: performance.now() };
  const now = () => after(clock.from, performance.now() - clock.set);
  const listeners = new Set<() => void>();
  let opening = false;
  const make = (): Desk => ({
    ...{ service: { name: 'Windlestraw House' }, home: pen.home, device: tablet.id, now },
    me: pen.by,
    sync: opening ? { kind: 'opening' } : { kind: 'kept', count: pen.written.length },
    monotonic: () => performance.now(),
    act: (decide) => {
      const outcome = decide(pen.home, { ...pen.doing, now: now() });
      if (!outcome.ok) return Promise.resolve({ ok: false, refusal: outcome });
      const facts = outcome.value.map((fresh) => {
        // The pen moves its clock on by a second for each fact; here the real one decides.
        pen.now = instantOf(Date.parse(now()) - 1000);
        return pen.write(fresh);
      });
      handDown();
      return Promise.resolve({ ok: true, facts });
    },
    usedElsewhere: () => Promise.resolve(undefined),
    // What the demo home came with was at the server from the start; what is done here never gets there.
    reached: ({ device: from, id }) => {
      const arrived = from.startsWith('S') ? pen.home.known.get(id)?.at : undefined;
      return arrived === undefined
        ? undefined
        : { position: 1, arrived: Date.parse(arrived), via: from as DeviceId };
    },
    chainFindings: () => [],
    verify: undefined,
    lock: () => location.reload(),
    changeHands: () => undefined,
    holdOpen: () => () => undefined,
    server: undefined,
    session: false,
    notices: { problem: undefined, storage: undefined, update: undefined },
  });
  let desk = make();
  const handDown = () => {
    desk = make();
    for (const tell of listeners) tell();
  };
  const elsewhere = new Pen(
    service,
    {
      ...{ head, hash, salt: () => random(16), draw: () => idFromBytes(random(12)) },
      device: { id: 'T0000002' as DeviceId, seq: 0, last: NO_FACT },
    },
    { now: start, by: me },
  );
  return {
    setClock: (at) => {
      clock = { from: at, set: performance.now() };
      handDown();
    },
    signIn: (who) => {
      pen.by = who;
      handDown();
    },
    setOpening: (is) => {
      opening = is;
      handDown();
    },
    arrive: (fact, by) => {
      elsewhere.by = by;
      elsewhere.now = instantOf(Date.parse(now()) - 1000);
      const written = elsewhere.write(fact);
      file(pen.home, written);
      handDown();
      return written;
    },
    desk: () => desk,
    subscribe: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
  };
}
