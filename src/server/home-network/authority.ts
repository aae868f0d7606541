import { AsnConvert } from '@peculiar/asn1-schema';
import {
  GeneralName,
  GeneralSubtree,
  GeneralSubtrees,
  id_ce_nameConstraints,
  NameConstraints,
} from '@peculiar/asn1-x509';
import { ALGORITHM, drawSerial, type KeyedCertificate, keyToPem, newKeys, x509 } from './x509.ts';

const DAY = 24 * 60 * 60 * 1000;
const YEARS = 10;

/**
 * What a certificate of ours may be for: addresses that exist only inside a home (RFC 1918, 4193,
 * 3927, 4291), names that do (RFC 6762 `.local`, RFC 8375 `.home.arpa`), and this machine's own name.
 * A tablet that trusts our authority does not thereby trust it for anything on the internet.
 */
const INSIDE = ['10.0.0.0/8', '172.16.0.0/12', '192.168.0.0/16', '169.254.0.0/16', '127.0.0.0/8'];
const INSIDE_6 = ['fc00::/7', 'fe80::/10', '::1/128'];
const NAMES = ['local', 'home.arpa', 'internal', 'lan', 'localhost'];

export interface NewAuthority {
  /** Shown by tablets in their list of authorities. */
  readonly title: string;
  readonly hostName: string;
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
      onlyInside(wanted.hostName),
    ],
  });
  return { certificate: `${made.toString('pem')}\n`, key: await keyToPem(keys) };
}

/** Name constraints (RFC 5280 section 4.2.1.10), critical: whoever cannot heed them must refuse. */
function onlyInside(hostName: string) {
  const bases = [
    ...[...NAMES, hostName].map((dNSName) => new GeneralName({ dNSName })),
    ...[...INSIDE, ...INSIDE_6].map((iPAddress) => new GeneralName({ iPAddress })),
  ];
  const permittedSubtrees = new GeneralSubtrees(bases.map((base) => new GeneralSubtree({ base })));
  const value = AsnConvert.serialize(new NameConstraints({ permittedSubtrees }));
  return new x509.Extension(id_ce_nameConstraints, true, value);
}
