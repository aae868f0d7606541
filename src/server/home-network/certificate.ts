import { isIP } from 'node:net';
import {
  ALGORITHM,
  drawSerial,
  type KeyedCertificate,
  keyFromPem,
  keyToPem,
  newKeys,
  x509,
} from './x509.ts';

const DAY = 24 * 60 * 60 * 1000;
const VALID_DAYS = 90;
/** Tablets whose clock is a little behind must take a fresh one too. */
const BACKDATED = DAY;
const RENEW_BEFORE = 30 * DAY;

export interface Wanted {
  /** Addresses and names under which tablets reach this machine. */
  readonly names: readonly string[];
  /** ms since 1970. */
  readonly now: number;
  readonly random: (bytes: number) => Uint8Array;
}

/** A certificate for this server, signed by the home's own authority. */
export async function issueCertificate(
  authority: KeyedCertificate,
  wanted: Wanted,
): Promise<KeyedCertificate> {
  const keys = await newKeys();
  const issuer = new x509.X509Certificate(authority.certificate);
  const made = await x509.X509CertificateGenerator.create({
    serialNumber: drawSerial(wanted.random),
    subject: [{ CN: ['Tallyround'] }],
    issuer: issuer.subjectName,
    notBefore: new Date(wanted.now - BACKDATED),
    notAfter: new Date(wanted.now + VALID_DAYS * DAY),
    signingAlgorithm: ALGORITHM,
    publicKey: keys.publicKey,
    signingKey: await keyFromPem(authority.key),
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension(wanted.names.map(generalName)),
      await x509.AuthorityKeyIdentifierExtension.create(issuer),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  return { certificate: `${made.toString('pem')}\n`, key: await keyToPem(keys) };
}

const generalName = (value: string) => ({ type: isIP(value) === 0 ? 'dns' : 'ip', value }) as const;

/** Whether a certificate is near its end, or this machine is reached by an address it does not name. */
export function mustRenew(certificate: string, wanted: Omit<Wanted, 'random'>): boolean {
  const held = new x509.X509Certificate(certificate);
  if (held.notAfter.getTime() - wanted.now < RENEW_BEFORE) return true;
  if (held.notBefore.getTime() > wanted.now) return true;
  const named = new Set(namesIn(held));
  return wanted.names.some((name) => !named.has(name));
}

function namesIn(certificate: x509.X509Certificate): readonly string[] {
  const extension = certificate.getExtension(x509.SubjectAlternativeNameExtension);
  return extension?.names.items.map(({ value }) => value) ?? [];
}
