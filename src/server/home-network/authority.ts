import { isIP } from 'node:net';
import { AsnConvert } from '@peculiar/asn1-schema';
import {
  GeneralName,
  GeneralSubtree,
  GeneralSubtrees,
  id_ce_nameConstraints,
  NameConstraints,
} from '@peculiar/asn1-x509';
import { INSIDE_IPV4, INSIDE_IPV6, INSIDE_NAMES } from './inside.ts';
import { ALGORITHM, drawSerial, type KeyedCertificate, keyToPem, newKeys, x509 } from './x509.ts';

const DAY = 24 * 60 * 60 * 1000;
const YEARS = 10;

export interface NewAuthority {
  /** Shown by tablets in their list of authorities. */
  readonly title: string;
  /** Names and addresses outside a home's own that this machine has; it may vouch for these too. */
  readonly extra: readonly string[];
  /** ms since 1970. */
  readonly now: number;
  readonly random: (bytes: number) => Uint8Array;
}

/** A certificate authority for one home. Its key signs nothing but this server's certificate. */
export async function makeAuthority(wanted: NewAuthority): Promise<KeyedCertificate> {
  const keys = await newKeys();
  const serial = drawSerial(wanted.random);
  const made = await x509.X509CertificateGenerator.createSelfSigned({
    serialNumber: serial,
    // The serial's start tells two authorities of one home apart.
    name: [{ CN: [`Tallyround, ${wanted.title} (${serial.slice(0, 6)})`] }],
    notBefore: new Date(wanted.now - DAY),
    notAfter: new Date(wanted.now + YEARS * 365 * DAY),
    signingAlgorithm: ALGORITHM,
    keys,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(
        x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign,
        true,
      ),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
      onlyInside(wanted.extra),
    ],
  });
  return { certificate: `${made.toString('pem')}\n`, key: await keyToPem(keys) };
}

/**
 * Name constraints (RFC 5280 section 4.2.1.10), critical: whoever cannot heed them must refuse. A
 * tablet that trusts our authority does not thereby trust it for anything on the internet.
 */
function onlyInside(extra: readonly string[]) {
  const [addresses, names] = [extra.filter(isAddress), extra.filter((name) => !isAddress(name))];
  const bases = [
    ...[...INSIDE_NAMES, ...names].map((dNSName) => new GeneralName({ dNSName })),
    ...[...INSIDE_IPV4, ...INSIDE_IPV6, ...addresses.map(alone)].map(
      (iPAddress) => new GeneralName({ iPAddress }),
    ),
  ];
  const permittedSubtrees = new GeneralSubtrees(bases.map((base) => new GeneralSubtree({ base })));
  const value = AsnConvert.serialize(new NameConstraints({ permittedSubtrees }));
  return new x509.Extension(id_ce_nameConstraints, true, value);
}

const isAddress = (name: string): boolean => isIP(name) !== 0;
const alone = (address: string): string => `${address}/${isIP(address) === 4 ? 32 : 128}`;
