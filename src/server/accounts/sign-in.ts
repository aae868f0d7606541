import { instantOf } from '../../care/time.ts';
import { foldName, pinFault } from '../../procedures/access/pin.ts';
import { ADDRESS, PERSON_ANYWHERE, PERSON_HERE } from '../../procedures/access/tries.ts';
import type { SignedIn, SignInRequest } from '../../procedures/access/wire.ts';
import { type Answer, give, turn } from '../answer.ts';
import type { Parts } from '../parts.ts';
import type { Colleague } from '../rights/rights.ts';
import type { Credential } from './credentials.ts';
import type { DeviceLine } from './devices.ts';
import type { Door } from './doors.ts';
import { hashPin, Nobody, verifyPin } from './pins.ts';
import type { SessionSecrets } from './sessions.ts';
import { tabletKeys } from './tablet-keys.ts';

export interface From {
  /** IP address, as the nearest trusted machine saw it. */
  readonly address: string;
  readonly device?: DeviceLine;
  /** A session this browser already has; it ends. */
  readonly token?: string;
}

export interface SignInDone {
  readonly signedIn: SignedIn;
  readonly token: string;
}

interface Candidate {
  readonly colleague: Colleague;
  readonly credential: Credential;
}

/** Signing in with who and PIN. Whoever is not there takes as long, and is told the same. */
export class SignIn {
  private readonly nobody: Nobody;

  constructor(private readonly parts: Parts) {
    this.nobody = new Nobody(parts.pinCost);
  }

  async run(request: SignInRequest, from: From): Promise<Answer<SignInDone>> {
    const { accounts, now } = this.parts;
    const found = await this.candidates(request.who);
    const doors = this.doors(request.who, found, from);
    const waitMs = accounts.together(() => accounts.doors.knock(doors, now()));
    if (waitMs > 0) return turn({ reason: 'wait', waitMs });
    const who = await this.whosePin(found, request.pin);
    if (who === undefined) {
      this.note('sign-in-refused', from);
      return turn({ reason: 'wrong' });
    }
    accounts.together(() => {
      accounts.doors.opened(doors);
      for (const door of doors.slice(0, 2)) accounts.doors.forgive(door);
    });
    return this.letIn(who, request, from);
  }

  /** Two people may answer to one name; then their PINs tell them apart. */
  private async candidates(who: SignInRequest['who']): Promise<readonly Candidate[]> {
    const { rights, accounts } = this.parts;
    const asked =
      'staff' in who ? [await rights.colleague(who.staff)] : await rights.named(who.name);
    return asked.flatMap((colleague) => {
      const credential = colleague && accounts.credentials.of(colleague.staff);
      return credential ? [{ colleague, credential }] : [];
    });
  }

  /**
   * The person's own doors first. A stranger's name has doors too: it waits as a colleague's does.
   * The PIN's number is part of them, so that nobody waits for what went wrong with an old PIN.
   */
  private doors(
    who: SignInRequest['who'],
    found: readonly Candidate[],
    from: From,
  ): readonly Door[] {
    const [one] = found;
    const typed = 'staff' in who ? who.staff : foldName(who.name);
    const person =
      found.length === 1 && one ? `${one.colleague.staff} ${one.credential.epoch}` : typed;
    const place = from.device?.id ?? from.address;
    return [
      { name: `person ${person} at ${place}`, limit: PERSON_HERE },
      { name: `person ${person}`, limit: PERSON_ANYWHERE },
      { name: `address ${from.address}`, limit: ADDRESS },
    ];
  }

  private async whosePin(found: readonly Candidate[], pin: string): Promise<Candidate | undefined> {
    if (found.length === 0) await this.nobody.verify(pin);
    const right: Candidate[] = [];
    for (const each of found) if (await verifyPin(each.credential.hash, pin)) right.push(each);
    return right.length === 1 ? right[0] : undefined;
  }

  private async letIn(
    { colleague, credential }: Candidate,
    request: SignInRequest,
    from: From,
  ): Promise<Answer<SignInDone>> {
    if (credential.mustChange && request.newPin === undefined)
      return turn({ reason: 'pin-must-change' });
    if (request.newPin !== undefined) {
      const fault = request.newPin === request.pin ? 'same-as-before' : pinFault(request.newPin);
      if (fault) return turn({ reason: 'pin-refused', fault });
      await changeOwnPin(this.parts, colleague, request.newPin);
    }
    const { token, key } = this.newSession(colleague, from);
    this.note('signed-in', from, colleague);
    const tablet = from.device && tabletKeys(this.parts, from.device, colleague.staff);
    return give({ token, signedIn: { ...colleague, key, ...(tablet && { tablet }) } });
  }

  /** A fresh one at every sign-in; what this browser had before ends. */
  private newSession({ staff }: Colleague, from: From): SessionSecrets {
    const { accounts, now } = this.parts;
    return accounts.together(() => {
      if (from.token !== undefined) accounts.sessions.end(from.token);
      accounts.sessions.prune(now());
      return accounts.sessions.open(
        { staff, ...(from.device && { device: from.device.id }) },
        now(),
      );
    });
  }

  private note(what: 'signed-in' | 'sign-in-refused', from: From, who?: Colleague): void {
    const { accounts, now } = this.parts;
    accounts.events.add({
      at: instantOf(now()),
      what,
      ...(who && { by: who.staff }),
      ...(from.device && { about: from.device.id }),
    });
  }
}

/** Sets somebody's PIN to one of their own choice. Its form has been judged. */
export async function changeOwnPin(parts: Parts, { staff }: Colleague, pin: string): Promise<void> {
  const hash = await hashPin(pin, parts.pinCost);
  const at = instantOf(parts.now());
  parts.accounts.together(() => {
    parts.accounts.credentials.set(staff, { hash, mustChange: false, at, by: staff });
    parts.accounts.events.add({ at, what: 'pin-changed', by: staff });
  });
}
