import { randomBytes, X509Certificate } from 'node:crypto';
import type { NetworkInterfaceInfo } from 'node:os';
import { describe, expect, it } from 'vitest';
import { homeAddresses } from './addresses.ts';
import { makeAuthority } from './authority.ts';
import { buildGuide } from './guide.ts';
import { qrText } from './qr.ts';

describe('the page that leads a tablet to trust the server', () => {
  it('hands out the certificate whose number it shows, under a strict policy', async () => {
    const { certificate } = await makeAuthority({
      title: 'Aldermere',
      extra: [],
      now: Date.now(),
      random: randomBytes,
    });
    const guide = await buildGuide(() => ({
      title: 'Aldermere <"&\'> House',
      appUrl: 'https://192.168.1.20:8240',
      guideUrl: 'http://192.168.1.20:8241',
      authority: certificate,
    }));
    const page = await guide.inject('/');
    expect(page.body).toContain('Aldermere &lt;&quot;&amp;&#39;&gt; House');
    expect(page.body).not.toMatch(/<script|style=/);
    expect(page.headers['content-security-policy']).toContain("style-src 'self'");
    const given = new X509Certificate((await guide.inject('/tallyround.crt')).rawPayload);
    expect(page.body.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ')).toContain(
      given.fingerprint256.replaceAll(':', ' '),
    );
    expect((await guide.inject('/guide.svg')).body).toMatch(/^<svg/);
    await guide.close();
  });

  it('can be opened from the terminal by its code', () => {
    const lines = qrText('http://192.168.1.20:8241').split('\n');
    // Version 2 (25 modules) and a quiet zone of four on each side.
    expect(lines.length).toBe(Math.ceil((25 + 8) / 2));
  });

  it('is told under addresses of the home first', () => {
    const at = (address: string, family: 'IPv4' | 'IPv6', internal = false) =>
      ({ address, family, internal }) as NetworkInterfaceInfo;
    const found = homeAddresses({
      lo: [at('127.0.0.1', 'IPv4', true)],
      tun0: [at('10.8.0.2', 'IPv4'), at('fe80::1', 'IPv6')],
      eth0: [at('fd00::20', 'IPv6'), at('2001:db8::9', 'IPv6'), at('192.168.1.20', 'IPv4')],
    });
    expect(found).toEqual(['192.168.1.20', '10.8.0.2', 'fd00::20']);
  });
});
