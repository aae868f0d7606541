import { instantOf } from '../../care/time.ts';
import { foldName, pinFault } from '../../procedures/access/pin.ts';
import { PERSON_ANYWHERE, PERSON_HERE, PLACE } from '../../procedures/access/tries.ts';
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
    const doors = doorsOf(request.who, found, from);
    const waitMs = accounts.together(() => accounts.doors.knock(doors, now()));
    if (waitMs > 0) return turn({ reason: 'wait', waitMs });
    const who = await this.whosePin(found, request.pin);
    if (who === undefined) {
      this.note('sign-in-refused', from);
      return turn({ reason: 'wrong' });
    }
    accounts.together(() => {
      accounts.doors.opened(doors);
      // Only their own: a namesake who signs in must not wipe out guesses at the other's PIN.
      for (const door of doorsOfPerson(personName(who), from)) accounts.doors.forgive(door);
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
      await changeOwnPin(this.parts, colleague, { pin: request.newPin });
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
      if (from.device) accounts.doubts.settle(staff, from.device.id);
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

/**
 * The doors of everybody who may be meant, then that of the place. A stranger's name has doors too: it
 * waits as a colleague's does.
 */
function doorsOf(
  who: SignInRequest['who'],
  found: readonly Candidate[],
  from: From,
): readonly Door[] {
  const typed = 'staff' in who ? who.staff : foldName(who.name);
  const names = found.length === 0 ? [typed] : found.map(personName);
  return [
    ...names.flatMap((name) => doorsOfPerson(name, from)),
    { name: `place ${placeOf(from)}`, limit: PLACE },
  ];
}

const doorsOfPerson = (person: string, from: From): readonly Door[] => [
  { name: `person ${person} at ${placeOf(from)}`, limit: PERSON_HERE },
  { name: `person ${person}`, limit: PERSON_ANYWHERE },
];

/** The PIN's number is part of it, so that nobody waits for what went wrong with an old PIN. */
const personName = ({ colleague, credential }: Candidate): string =>
  `${colleague.staff} ${credential.epoch}`;

/** A tablet of the home is a place of its own: behind one router all of them have one address. */
const placeOf = ({ device, address }: From): string => device?.id ?? address;

/**
 * Sets somebody's PIN to one of their own choice. Its form has been judged. What was opened with the
 * old one ends, but for the session (`token`) that they change it in: they may have been watched.
 */
export async function changeOwnPin(
  parts: Parts,
  { staff }: Colleague,
  to: { readonly pin: string; readonly token?: string | undefined },
): Promise<void> {
  const hash = await hashPin(to.pin, parts.pinCost);
  const at = instantOf(parts.now());
  parts.accounts.together(() => {
    parts.accounts.credentials.set(staff, { hash, mustChange: false, at, by: staff });
    parts.accounts.sessions.endAllOf(staff, to.token);
    parts.accounts.events.add({ at, what: 'pin-changed', by: staff });
  });
}
