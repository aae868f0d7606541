import type { Enrolled, SignedIn } from '../../src/procedures/access/wire.ts';
import { SESSION_KEY_HEADER, SYNC_KEY_HEADER } from '../../src/procedures/access/wire.ts';

export interface Heard {
  readonly status: number;
  readonly headers: Headers;
  readonly body: Record<string, unknown>;
}

/** A browser as far as the server can tell: keeps cookies, says where its calls come from. */
export class Caller {
  readonly cookies = new Map<string, string>();
  /** The session's other half. */
  key: string | undefined;
  syncKey: string | undefined;

  constructor(readonly url: string) {}

  async call(
    method: string,
    path: string,
    options: { readonly body?: unknown; readonly headers?: Record<string, string> } = {},
  ): Promise<Heard> {
    const answer = await fetch(new URL(path, this.url), {
      method,
      headers: {
        origin: new URL(this.url).origin,
        'sec-fetch-site': 'same-origin',
        ...this.credentials(),
        ...(options.body !== undefined && { 'content-type': 'application/json' }),
        ...options.headers,
      },
      ...(options.body !== undefined && {
        body: typeof options.body === 'string' ? options.body : JSON.stringify(options.body),
      }),
    });
    this.keep(answer.headers.getSetCookie());
    const text = await answer.text();
    const json = (answer.headers.get('content-type') ?? '').includes('json');
    return {
      status: answer.status,
      headers: answer.headers,
      body: json ? (JSON.parse(text) as Record<string, unknown>) : { text },
    };
  }

  credentials(): Record<string, string> {
    const cookie = [...this.cookies].map(([name, value]) => `${name}=${value}`).join('; ');
    return {
      ...(cookie !== '' && { cookie }),
      ...(this.key !== undefined && { [SESSION_KEY_HEADER]: this.key }),
      ...(this.syncKey !== undefined && { [SYNC_KEY_HEADER]: this.syncKey }),
    };
  }

  private keep(lines: readonly string[]): void {
    for (const line of lines) {
      const [pair = ''] = line.split(';');
      const [name = '', value = ''] = pair.split('=');
      if (/max-age=0|expires=thu, 01 jan 1970/i.test(line)) this.cookies.delete(name);
      else this.cookies.set(name, value);
    }
  }

  async signIn(staff: string, pin: string, newPin?: string): Promise<Heard> {
    const body = { who: { staff }, pin, ...(newPin !== undefined && { newPin }) };
    const heard = await this.call('POST', '/sign-in', { body });
    if (heard.status === 200) this.key = (heard.body as unknown as SignedIn).key;
    return heard;
  }

  /** As a manager does on a new tablet, signed in already. */
  async enrol(name = 'Kitchen tablet'): Promise<Enrolled> {
    const heard = await this.call('POST', '/devices', {
      body: { name, osLock: true, diskEncrypted: true },
    });
    const enrolled = heard.body as unknown as Enrolled;
    this.syncKey = enrolled.syncKey;
    return enrolled;
  }
}
