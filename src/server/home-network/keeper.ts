import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeAuthority } from './authority.ts';
import { issueCertificate, mustRenew, type Wanted } from './certificate.ts';
import type { KeyedCertificate } from './x509.ts';

export interface HomeTls {
  /** What a tablet is led to trust, PEM. */
  readonly authority: string;
  readonly server: KeyedCertificate;
  /** True when a new certificate was made just now. */
  readonly renewed: boolean;
}

export interface KeepTls extends Wanted {
  /** The data folder's own for these files; made when missing. */
  readonly folder: string;
  readonly title: string;
  readonly hostName: string;
}

/**
 * The home's authority and this server's certificate, made when they are missing and renewed before
 * they end. Asked for at start and again from time to time.
 */
export async function keepTls(wanted: KeepTls): Promise<HomeTls> {
  mkdirSync(wanted.folder, { recursive: true, mode: 0o700 });
  chmodSync(wanted.folder, 0o700);
  const { folder } = wanted;
  const authority =
    load(folder, 'authority') ?? save(folder, 'authority', await makeAuthority(wanted));
  const held = load(folder, 'server');
  if (held && !mustRenew(held.certificate, wanted))
    return { authority: authority.certificate, server: held, renewed: false };
  const server = save(folder, 'server', await issueCertificate(authority, wanted));
  return { authority: authority.certificate, server, renewed: true };
}

type Kind = 'authority' | 'server';
const files = (folder: string, kind: Kind) => ({
  certificate: join(folder, `${kind}.pem`),
  key: join(folder, `${kind}-key.pem`),
});

function load(folder: string, kind: Kind): KeyedCertificate | undefined {
  const file = files(folder, kind);
  if (!existsSync(file.certificate) || !existsSync(file.key)) return undefined;
  return {
    certificate: readFileSync(file.certificate, 'utf8'),
    key: readFileSync(file.key, 'utf8'),
  };
}

/** The key first: a certificate without one would be taken for a whole pair. */
function save(folder: string, kind: Kind, made: KeyedCertificate): KeyedCertificate {
  const file = files(folder, kind);
  write(file.key, made.key, 0o600);
  write(file.certificate, made.certificate, 0o644);
  return made;
}

function write(file: string, text: string, mode: number): void {
  writeFileSync(`${file}.new`, text, { mode });
  chmodSync(`${file}.new`, mode);
  renameSync(`${file}.new`, file);
}
