import type { StaffId } from '../../care/ids.ts';
import type { StorageReason } from '../../ledger/store.ts';
import { foldName, type PinFault } from '../../procedures/access/pin.ts';
import { failed, PERSON_HERE, waitFor } from '../../procedures/access/tries.ts';
import type {
  Enrolled,
  SignedIn,
  SignInRequest,
  TabletKeys,
  Turned,
} from '../../procedures/access/wire.ts';
import { fromBase64url } from './base64url.ts';
import type { Calls } from './calls.ts';
import type { Door, Enrolment } from './door/door.ts';
import { leaseOver } from './door/lease.ts';
import { unwrapKey, type Wrap, type WrapCost, wrapKey } from './door/wrap.ts';
import type { Known } from './state.ts';
import type { TabletWorld } from './world.ts';

export type Who = SignInRequest['who'];

export type SignInRefusal =
  /** Name or PIN; which of them is not said. */
  | { readonly reason: 'wrong' }
  | { readonly reason: 'wait'; readonly waitMs: number }
  /** Somebody else has set this PIN: sign in again with one of your own choice beside it. */
  | { readonly reason: 'pin-must-change' }
  | { readonly reason: 'pin-refused'; readonly fault: PinFault }
  /** Nobody of that name has signed in on this tablet yet, and the server cannot be reached. */
  | { readonly reason: 'needs-contact' }
  /** Too long without contact, or the clock was set back: the server must be reached once. */
  | { readonly reason: 'lease-over' }
  /** The server does not know this tablet, or has retired it: a manager enrols it. */
  | { readonly reason: 'not-enrolled' }
  | { readonly reason: 'server'; readonly turned: Turned }
  /** What rests here cannot be opened: written by a newer program, or damaged. */
  | { readonly reason: 'storage'; readonly what: StorageReason };

/** Somebody has given the right PIN, and this is the key it opens. */
export interface Opened {
  readonly ok: true;
  readonly key: Uint8Array<ArrayBuffer>;
  readonly who: Known;
  readonly by: 'this-tablet' | 'server';
}
export type SignInOutcome = Opened | ({ readonly ok: false } & SignInRefusal);

const refuse = (why: SignInRefusal): { readonly ok: false } & SignInRefusal => ({
  ok: false,
  ...why,
});
const DAY = 24 * 60 * 60 * 1000;

/** Who may open the tablet: by a wrap that is here, or by asking the server. */
export class Keys {
  constructor(
    private readonly world: TabletWorld,
    private readonly door: Door,
    private readonly calls: Calls,
    private readonly cost?: WrapCost,
  ) {}

  /** Here first, so that it works at once and without a signal; then there, for whoever is new here. */
  async signIn(request: SignInRequest): Promise<SignInOutcome> {
    const enrolment = await this.door.enrolment();
    const wrap = request.newPin === undefined ? await this.wrapOf(request.who) : undefined;
    const here = enrolment && wrap && (await this.tryHere(enrolment, wrap, request.pin));
    if (here && (here.ok || here.reason === 'wait')) return here;
    const there = await this.tryServer(request, enrolment);
    // The server may make an address wait for what others did there; this tablet has its own count.
    const waits =
      here !== undefined && there !== 'no-contact' && !there.ok && there.reason === 'wait';
    if (there !== 'no-contact' && !waits) return there;
    return here ?? refuse({ reason: 'needs-contact' });
  }

  private async wrapOf(who: Who): Promise<Wrap | undefined> {
    const wraps = await this.door.wraps();
    if ('staff' in who) return wraps.find(({ staff }) => staff === who.staff);
    const named = wraps.filter(({ called }) => foldName(called) === foldName(who.name));
    return named.length === 1 ? named[0] : undefined;
  }

  /** The failure is on the disk before the PIN is tried: pulling the plug forgives nothing. */
  private async tryHere(enrolment: Enrolment, wrap: Wrap, pin: string): Promise<SignInOutcome> {
    const deviceNow = this.world.now();
    if (leaseOver(enrolment.contact, { deviceNow, highest: enrolment.highest }))
      return refuse({ reason: 'lease-over' });
    const tries = await this.door.tries(wrap.staff);
    const waitMs = waitFor(tries, PERSON_HERE, deviceNow);
    if (waitMs > 0) return refuse({ reason: 'wait', waitMs });
    await this.door.keepTries(wrap.staff, failed(tries, PERSON_HERE, deviceNow));
    const key = await unwrapKey(this.world, wrap, { pin, owner: enrolment.owner });
    if (!key) return refuse({ reason: 'wrong' });
    await this.door.keepTries(wrap.staff, undefined);
    await this.door.change({ highest: deviceNow });
    return { ok: true, key, who: { staff: wrap.staff, called: wrap.called }, by: 'this-tablet' };
  }

  private async tryServer(
    request: SignInRequest,
    enrolment: Enrolment | undefined,
  ): Promise<SignInOutcome | 'no-contact'> {
    const heard = await this.calls.signIn(request);
    if (!heard.ok)
      return heard.turned.reason === 'no-contact' ? 'no-contact' : refuse(refusalOf(heard.turned));
    const { tablet, staff, called } = heard.value;
    if (!tablet || !enrolment || tablet.device !== enrolment.device)
      return refuse({ reason: 'not-enrolled' });
    const key = fromBase64url(tablet.tabletKey);
    await this.keepFor(heard.value, key, { pin: request.newPin ?? request.pin, enrolment });
    await this.renew(tablet);
    return { ok: true, key, who: { staff, called }, by: 'server' };
  }

  /** From now on this PIN opens the tablet without the server. */
  async keepFor(
    { staff, called }: Pick<SignedIn, 'staff' | 'called'>,
    key: Uint8Array<ArrayBuffer>,
    by: { readonly pin: string; readonly enrolment: Pick<Enrolment, 'owner'> },
  ): Promise<void> {
    const { owner } = by.enrolment;
    const cost = this.cost && { cost: this.cost };
    await this.door.keepWrap(
      await wrapKey(this.world, key, { staff, called, pin: by.pin, owner, ...cost }),
    );
  }

  /**
   * Tells the server who has signed in here, for a session and a fresh lease. `revoked`: it does not
   * take this PIN any more, so neither must the tablet.
   */
  async meetServer(request: SignInRequest): Promise<'met' | 'revoked' | 'no-contact'> {
    const heard = await this.calls.signIn(request);
    if (heard.ok) {
      if (heard.value.tablet) await this.renew(heard.value.tablet);
      return 'met';
    }
    return heard.turned.reason === 'wrong' ? 'revoked' : 'no-contact';
  }

  /** Somebody's new PIN, once the server has taken it. */
  async changePin(
    who: Known,
    to: { readonly pin: string; readonly newPin: string },
  ): Promise<{ readonly ok: true } | ({ readonly ok: false } & SignInRefusal)> {
    const heard = await this.calls.changePin(to.pin, to.newPin);
    if (!heard.ok)
      return refuse(
        heard.turned.reason === 'no-contact'
          ? { reason: 'needs-contact' }
          : refusalOf(heard.turned),
      );
    const enrolment = await this.door.enrolment();
    const key = heard.value.tablet && fromBase64url(heard.value.tablet.tabletKey);
    if (key && enrolment) await this.keepFor(who, key, { pin: to.newPin, enrolment });
    return { ok: true };
  }

  /** Keeps what the server gave a tablet that a manager has enrolled, the first time or again. */
  async keepEnrolment(enrolled: Enrolled, before: Enrolment | undefined): Promise<Enrolment> {
    const { device, name, service, rules } = enrolled;
    const key = fromBase64url(enrolled.tabletKey);
    const owner = before?.owner ?? device;
    const cipher = await this.world.cipher(key, owner);
    const syncKey = new TextEncoder().encode(enrolled.syncKey);
    const sealedSyncKey = await cipher.seal(syncKey, SYNC_KEY_PLACE);
    const deviceAt = this.world.now();
    const contact = { deviceAt, leaseMs: rules.leaseDays * DAY };
    const base = { device, name, service, owner, rules, contact };
    const enrolment = { ...base, sealedSyncKey, highest: deviceAt };
    await this.door.keepEnrolment(enrolment);
    if (!before) await this.door.forgetWraps();
    return enrolment;
  }

  /** The tablet's key by somebody's wrap, without counting a failure: they have just signed in. */
  async keyBy(staff: StaffId, pin: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
    const [enrolment, wrap] = [await this.door.enrolment(), await this.wrapOf({ staff })];
    return enrolment && wrap && unwrapKey(this.world, wrap, { pin, owner: enrolment.owner });
  }

  private renew({ rules }: TabletKeys): Promise<void> {
    const deviceAt = this.world.now();
    const contact = { deviceAt, leaseMs: rules.leaseDays * DAY };
    return this.door.change({ rules, contact, highest: deviceAt });
  }
}

/** Where the sealed half of the sync credential is bound to. */
export const SYNC_KEY_PLACE = 'sync-key';

function refusalOf(turned: Turned): SignInRefusal {
  switch (turned.reason) {
    case 'wrong':
    case 'wait':
    case 'pin-must-change':
    case 'pin-refused':
      return turned;
    default:
      return { reason: 'server', turned };
  }
}
