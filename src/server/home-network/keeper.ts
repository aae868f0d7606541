import { chmodSync, existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeAuthority } from './authority.ts';
import { issueCertificate, mustRenew, type Wanted } from './certificate.ts';
import { isInside } from './inside.ts';
import type { KeyedCertificate } from './x509.ts';

export interface HomeTls {
  /** What a tablet is led to trust, PEM. */
  readonly authority: string;
  /** True when there was an authority, but another had to be made: tablets must be led to it again. */
  readonly replaced: boolean;
  readonly server: KeyedCertificate;
  /** True when the server's certificate was made just now. */
  readonly renewed: boolean;
}

export interface KeepTls extends Wanted {
  /** The data folder's own for these files; made when missing. */
  readonly folder: string;
  readonly title: string;
}

/**
 * The home's authority and this server's certificate, made when they are missing and renewed before
 * they end. Asked for at start and again from time to time.
 */
export async function keepTls(wanted: KeepTls): Promise<HomeTls> {
  mkdirSync(wanted.folder, { recursive: true, mode: 0o700 });
  chmodSync(wanted.folder, 0o700);
  const before = load(wanted.folder, 'authority');
  const known = before && maySign(wanted) ? before : undefined;
  const authority = known ?? (await freshAuthority(wanted));
  const held = known && load(wanted.folder, 'server');
  const keep = held && !mustRenew(held.certificate, wanted);
  const server = keep
    ? held
    : save(wanted.folder, 'server', await issueCertificate(authority, wanted));
  const replaced = before !== undefined && known === undefined;
  return { authority: authority.certificate, replaced, server, renewed: !keep };
}

/** Whether the authority there is may vouch for every name that is wanted now. */
function maySign({ folder, names }: KeepTls): boolean {
  const file = extraFile(folder);
  const extra = existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as string[]) : [];
  return names.every((name) => isInside(name) || extra.includes(name));
}

async function freshAuthority(wanted: KeepTls): Promise<KeyedCertificate> {
  const extra = wanted.names.filter((name) => !isInside(name));
  const made = await makeAuthority({ ...wanted, extra });
  write(extraFile(wanted.folder), JSON.stringify(extra), 0o644);
  return save(wanted.folder, 'authority', made);
}

const extraFile = (folder: string): string => join(folder, 'authority-also-for.json');

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
