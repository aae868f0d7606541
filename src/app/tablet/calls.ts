import type { StaffId } from '../../care/ids.ts';
import {
  type Enrolled,
  type EnrolRequest,
  SESSION_KEY_HEADER,
  type SignedIn,
  type SignInRequest,
  SYNC_KEY_HEADER,
  type TabletKeys,
  type Turned,
  type UsedElsewhere,
} from '../../procedures/access/wire.ts';

/** What came of a call. `no-contact`: it was not answered, or not by our server. */
export type Heard<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly turned: Turned | { readonly reason: 'no-contact' } };

const ANSWER_WITHIN_MS = 15_000;
/** Somebody holds a kit and waits: no longer than this, whatever the network does. */
const BEDSIDE_WITHIN_MS = 1500;

/** Calls to the server. Holds the session's key, which is never stored. */
export class Calls {
  private key: string | undefined;

  /** `onSession`: told whenever a session begins or ends, here or on the server. */
  constructor(private readonly onSession: (held: boolean) => void) {}

  get hasSession(): boolean {
    return this.key !== undefined;
  }

  private holdKey(key: string | undefined): void {
    this.key = key;
    this.onSession(key !== undefined);
  }

  /** Other hands have taken over: what the last person's session may do, these must not. */
  dropSession(): void {
    this.holdKey(undefined);
  }

  async signIn(request: SignInRequest): Promise<Heard<SignedIn>> {
    const heard = await this.call<SignedIn>('POST', '/sign-in', { body: request });
    if (heard.ok) this.holdKey(heard.value.key);
    return heard;
  }

  /** Ends the session even as the page goes away. */
  async signOut(): Promise<void> {
    this.holdKey(undefined);
    await this.call('POST', '/sign-out', { body: {}, keepalive: true });
  }

  enrol = (request: EnrolRequest): Promise<Heard<Enrolled>> =>
    this.call('POST', '/devices', { body: request });

  changePin = (pin: string, newPin: string): Promise<Heard<{ readonly tablet?: TabletKeys }>> =>
    this.call('POST', '/pin', { body: { pin, newPin } });

  setPin = (staff: StaffId, pin: string): Promise<Heard<null>> =>
    this.call('PUT', `/accounts/${staff}/pin`, { body: { pin } });

  endPin = (staff: StaffId): Promise<Heard<null>> => this.call('DELETE', `/accounts/${staff}/pin`);

  /** Any other call that needs the session. */
  ask = <T>(method: string, path: string, body?: unknown): Promise<Heard<T>> =>
    this.call(method, path, body === undefined ? {} : { body });

  /** One sync message; the status and the words are the ledger's to read. */
  async sync(body: unknown, syncKey: string): Promise<{ status: number; json: unknown }> {
    const answer = await fetch('/sync', {
      method: 'POST',
      headers: { 'content-type': 'application/json', [SYNC_KEY_HEADER]: syncKey },
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(2 * ANSWER_WITHIN_MS),
    });
    return { status: answer.status, json: await answer.json() };
  }

  /** Whether another home has used a code. Undefined where nobody can say so in time. */
  async usedElsewhere(code: string, syncKey: string): Promise<UsedElsewhere | undefined> {
    try {
      const answer = await fetch('/codes/elsewhere', {
        method: 'POST',
        headers: { 'content-type': 'application/json', [SYNC_KEY_HEADER]: syncKey },
        body: JSON.stringify({ code }),
        signal: AbortSignal.timeout(BEDSIDE_WITHIN_MS),
      });
      return answer.ok ? ((await answer.json()) as UsedElsewhere) : undefined;
    } catch {
      return undefined;
    }
  }

  private async call<T>(
    method: string,
    path: string,
    options: { readonly body?: unknown; readonly keepalive?: boolean } = {},
  ): Promise<Heard<T>> {
    try {
      const answer = await fetch(path, {
        method,
        headers: {
          ...(this.key !== undefined && { [SESSION_KEY_HEADER]: this.key }),
          ...(options.body !== undefined && { 'content-type': 'application/json' }),
        },
        ...(options.body !== undefined && { body: JSON.stringify(options.body) }),
        keepalive: options.keepalive ?? false,
        signal: AbortSignal.timeout(ANSWER_WITHIN_MS),
      });
      const value: unknown = answer.status === 204 ? null : await answer.json();
      if (answer.ok) return { ok: true, value: value as T };
      const turned = value as Turned;
      if (turned.reason === 'not-signed-in') this.holdKey(undefined);
      return { ok: false, turned };
    } catch {
      return { ok: false, turned: { reason: 'no-contact' } };
    }
  }
}
