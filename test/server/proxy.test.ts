import { afterEach, describe, expect, it } from 'vitest';
import { clear, type Home, pinOf, startHome, WORKER } from './home.ts';

let home: Home;
afterEach(async () => {
  await home.stop();
  clear(home);
});

const forwarded = {
  'x-forwarded-for': '203.0.113.9',
  'x-forwarded-proto': 'https',
  'x-forwarded-host': 'aldermere.example',
  origin: 'https://aldermere.example',
};
const signIn = (headers: Record<string, string>, pin = pinOf(WORKER)) =>
  home.caller().call('POST', '/sign-in', { body: { who: { staff: WORKER }, pin }, headers });

describe('behind the proxy that was named', () => {
  it('the outer scheme, name and address count', async () => {
    const names = new Set(['aldermere.example']);
    home = await startHome({ proxies: ['127.0.0.1'], names });
    const heard = await signIn(forwarded);
    expect(heard.status).toBe(200);
    expect(heard.headers.getSetCookie()[0]).toMatch(
      /^__Host-tallyround_session=[\w-]{43}; Path=\/; HttpOnly; Secure; SameSite=Strict$/,
    );
    expect(heard.headers.get('strict-transport-security')).toBe('max-age=31536000');
  });

  it('each outer address has tries of its own', async () => {
    home = await startHome({ proxies: ['127.0.0.1'], names: new Set(['aldermere.example']) });
    for (let i = 0; i < 5; i++) await signIn(forwarded, '000001');
    expect((await signIn(forwarded)).status).toBe(429);
    expect((await signIn({ ...forwarded, 'x-forwarded-for': '203.0.113.10' })).status).toBe(200);
  });

  it('a name that was not given is turned away', async () => {
    home = await startHome({ proxies: ['127.0.0.1'], names: new Set(['aldermere.example']) });
    const heard = await signIn({ ...forwarded, 'x-forwarded-host': 'rebound.example' });
    expect(heard.status).toBe(421);
  });
});

describe('forged headers of a proxy', () => {
  it('from anywhere else are not believed: no other address, no TLS, no other name', async () => {
    home = await startHome({ proxies: ['192.0.2.1'], names: new Set(['aldermere.example']) });
    const { origin: _own, ...forged } = forwarded;
    for (let i = 0; i < 5; i++)
      await signIn({ ...forged, 'x-forwarded-for': `203.0.113.${i}` }, '000001');
    expect((await signIn(forged)).status).toBe(429);
    home.clock.ms += 60_000;
    const heard = await signIn({ ...forged, 'x-forwarded-host': 'rebound.example' });
    expect(heard.status).toBe(200);
    expect(heard.headers.getSetCookie()[0]).toMatch(/^tallyround_session=/);
    expect(heard.headers.get('strict-transport-security')).toBeNull();
  });

  it('are not believed when no proxy was named', async () => {
    home = await startHome();
    const { origin: _own, ...forged } = forwarded;
    for (let i = 0; i < 5; i++)
      await signIn({ ...forged, 'x-forwarded-for': `203.0.113.${i}` }, '000001');
    expect((await signIn({ ...forged, 'x-forwarded-for': '203.0.113.99' })).status).toBe(429);
  });
});
