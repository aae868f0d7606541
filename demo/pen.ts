import type { Fact, NewFact } from '../src/care/catalogue.ts';
import { catalogue } from '../src/care/catalogue.ts';
import type { Home, Service } from '../src/care/home.ts';
import { emptyHome, file } from '../src/care/home.ts';
import type { StaffId } from '../src/care/ids.ts';
import type { Instant } from '../src/care/time.ts';
import { after, ms } from '../src/care/time.ts';
import { buildFacts, sealAll } from '../src/ledger/append.ts';
import type { JsonObject } from '../src/ledger/canonical.ts';
import type { Written } from '../src/ledger/fact.ts';
import { openFact } from '../src/ledger/fact.ts';
import type { Hash } from '../src/ledger/hash.ts';
import type { StaffId as LedgerStaffId } from '../src/ledger/ids.ts';
import type { DeviceHead, Head } from '../src/ledger/store.ts';
import type { Doing, Outcome } from '../src/procedures/doing.ts';

export interface Desk {
  /** The ledger to write after, and the device that writes. */
  readonly head: Head;
  readonly device: DeviceHead;
  readonly hash: Hash;
  readonly salt: () => Uint8Array;
  readonly draw: () => string;
}

/** Writes facts one after another, as one device would, and keeps the home they make. */
export class Pen {
  readonly home: Home;
  readonly written: Written[] = [];
  now: Instant;
  by: StaffId;
  #device: DeviceHead;
  readonly #desk: Desk;

  constructor(
    service: Service,
    desk: Desk,
    start: { readonly now: Instant; readonly by: StaffId },
  ) {
    this.home = emptyHome(service);
    this.#desk = desk;
    this.#device = desk.device;
    this.now = start.now;
    this.by = start.by;
  }

  get device(): DeviceHead {
    return this.#device;
  }

  get doing(): Doing {
    return { now: this.now, by: this.by, device: this.#device.id, draw: this.#desk.draw };
  }

  /** Does what a procedure allowed. The demo never asks for what it may not have. */
  do(outcome: Outcome): Fact[] {
    if (!outcome.ok) throw new Error(`the demo was refused: ${JSON.stringify(outcome)}`);
    return outcome.value.map((fresh) => this.write(fresh));
  }

  /** Each fact a second after the one before: no two hands move at once. */
  write(fresh: NewFact): Fact {
    this.now = after(this.now, 1000);
    const { hash, salt, head } = this.#desk;
    const draft = {
      kind: fresh.kind,
      v: catalogue[fresh.kind].v,
      data: fresh.data as unknown as JsonObject,
      ...(fresh.private !== undefined && { private: fresh.private as unknown as JsonObject }),
    };
    const records = sealAll([draft], { salt });
    if (!records.ok) throw new Error(`the demo wrote a bad fact: ${records.detail}`);
    const writer = {
      by: this.by as string as LedgerStaffId,
      ...(fresh.with && { with: fresh.with as readonly string[] as readonly LedgerStaffId[] }),
      deviceNow: ms(this.now),
      hash,
    };
    const built = buildFacts([draft], {
      ...{ head, device: this.#device, clock: { off: 0 }, writer, records: records.texts },
    });
    if (!built.ok) throw new Error(`the demo wrote a bad fact: ${built.detail}`);
    this.#device = built.next;
    const [written] = built.facts;
    if (written === undefined) throw new Error('nothing was written');
    this.written.push(written);
    const fact = openFact(written) as unknown as Fact;
    file(this.home, fact);
    return this.home.known.get(fact.id) ?? fact;
  }
}
