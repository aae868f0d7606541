import { execFileSync, spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { issueCertificate } from './certificate.ts';
import { type KeepTls, keepTls } from './keeper.ts';
import { fingerprint } from './x509.ts';

const DAY = 24 * 60 * 60 * 1000;
let folder: string;
let wanted: KeepTls;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tallyround-tls-'));
  wanted = {
    folder: join(folder, 'tls'),
    title: 'Aldermere',
    names: ['192.168.1.20', 'fd00::20', 'aldermere-desk.local', 'aldermere-desk'],
    now: Date.now(),
    random: randomBytes,
  };
});
afterEach(() => rmSync(folder, { recursive: true }));

const file = (name: string) => join(wanted.folder, name);
/** OpenSSL is the outside judge of the chain: another lineage than the library that makes it. */
const verify = (certificate: string, ...more: string[]) =>
  spawnSync(
    'openssl',
    [
      'verify',
      '-x509_strict',
      '-purpose',
      'sslserver',
      '-CAfile',
      file('authority.pem'),
      ...more,
      certificate,
    ],
    { encoding: 'utf8' },
  );

describe('the home’s own certificate', () => {
  it('is one that OpenSSL takes for each of the machine’s addresses and names', async () => {
    await keepTls(wanted);
    for (const name of ['aldermere-desk.local', 'aldermere-desk'])
      expect(verify(file('server.pem'), '-verify_hostname', name).stdout).toContain('OK');
    for (const ip of ['192.168.1.20', 'fd00::20'])
      expect(verify(file('server.pem'), '-verify_ip', ip).stdout).toContain('OK');
    expect(verify(file('server.pem'), '-verify_hostname', 'elsewhere.local').status).not.toBe(0);
  });

  it('comes from an authority that is worth nothing outside the home', async () => {
    const { authority } = await keepTls(wanted);
    const keyed = { certificate: authority, key: readFileSync(file('authority-key.pem'), 'utf8') };
    for (const names of [['bank.example'], ['203.0.113.9'], ['2001:db8::1']]) {
      const forged = await issueCertificate(keyed, { ...wanted, names });
      writeFileSync(file('forged.pem'), forged.certificate);
      const judged = verify(file('forged.pem'));
      expect([names, judged.status]).not.toEqual([names, 0]);
      expect(judged.stderr).toContain('permitted subtree violation');
    }
  });

  it('is for an address outside a home’s own only where the machine has one; a new one needs a new authority', async () => {
    const odd = { ...wanted, names: ['198.51.100.7', ...wanted.names] };
    const first = await keepTls(odd);
    expect(verify(file('server.pem'), '-verify_ip', '198.51.100.7').stdout).toContain('OK');
    expect((await keepTls(odd)).replaced).toBe(false);
    const moved = await keepTls({ ...odd, names: ['198.51.100.8'] });
    expect([first.replaced, moved.replaced]).toEqual([false, true]);
    expect(moved.authority).not.toBe(first.authority);
    expect(verify(file('server.pem'), '-verify_ip', '198.51.100.8').stdout).toContain('OK');
  });

  it('has the fingerprint that OpenSSL reads from it', async () => {
    const { authority } = await keepTls(wanted);
    const said = execFileSync(
      'openssl',
      ['x509', '-in', file('authority.pem'), '-noout', '-fingerprint', '-sha256'],
      { encoding: 'utf8' },
    );
    expect(said.trim().split('=')[1]).toBe(fingerprint(authority));
  });

  it('keeps its keys from other users of the machine', async () => {
    await keepTls(wanted);
    for (const name of ['authority-key.pem', 'server-key.pem'])
      expect(statSync(file(name)).mode & 0o777).toBe(0o600);
    expect(statSync(wanted.folder).mode & 0o777).toBe(0o700);
  });

  it('stays until a month before its end or until an address is new; the authority stays', async () => {
    const first = await keepTls(wanted);
    expect(first.renewed).toBe(true);
    expect((await keepTls({ ...wanted, now: wanted.now + 59 * DAY })).renewed).toBe(false);
    const later = await keepTls({ ...wanted, now: wanted.now + 61 * DAY });
    expect(later.renewed).toBe(true);
    expect(later.authority).toBe(first.authority);
    const moved = await keepTls({ ...wanted, now: wanted.now + 61 * DAY, names: ['10.0.0.7'] });
    expect(moved.renewed).toBe(true);
  });
});
