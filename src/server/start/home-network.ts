import type { AddressInfo } from 'node:net';
import { homeAddresses, inUrl } from '../home-network/addresses.ts';
import { buildGuide } from '../home-network/guide.ts';
import { isInside } from '../home-network/inside.ts';
import { keepTls } from '../home-network/keeper.ts';
import { fingerprint, type KeyedCertificate } from '../home-network/x509.ts';
import { places } from './data-folder.ts';
import { listenFault } from './faults.ts';
import type { Machine } from './machine.ts';
import type { Options } from './options.ts';

export interface Tls {
  readonly cert: string;
  readonly key: string;
}

/** The home's own TLS. */
export interface HomeNetwork {
  readonly tls: Tls;
  /** The home's certificate authority, PEM. */
  readonly authority: string;
  readonly fingerprint: string;
  /** The address to tell people. */
  readonly address: string;
  /** Names under which the machine may be called. */
  readonly names: readonly string[];
  /** Tablets that trusted an older authority must be led to this one. */
  readonly replaced: boolean;
  /** A fresh certificate, when the old one nears its end or the machine has another address. */
  readonly renew: () => Promise<Tls | undefined>;
}

export async function openHomeNetwork(
  options: Options,
  machine: Machine,
  title: string,
): Promise<HomeNetwork> {
  const local = localNames(machine.hostName);
  const fixed = [...local, ...options.names, 'localhost', '127.0.0.1'];
  const names = () => [...addressesOf(options, machine), ...fixed];
  const keep = (wanted: readonly string[]) =>
    keepTls({
      folder: places(options.data).tls,
      title,
      names: wanted,
      now: machine.now(),
      random: machine.random,
    });
  const first = names();
  const { authority, replaced, server } = await keep(first);
  return {
    tls: tlsOf(server),
    authority,
    replaced,
    fingerprint: fingerprint(authority),
    address: addressesOf(options, machine)[0] ?? '127.0.0.1',
    names: local,
    renew: async () => {
      // A running server never changes the authority under its tablets.
      const again = await keep(names().filter((name) => isInside(name) || first.includes(name)));
      return again.renewed ? tlsOf(again.server) : undefined;
    },
  };
}

const tlsOf = ({ certificate, key }: KeyedCertificate): Tls => ({ cert: certificate, key });

/** The one address that was asked for, or all that tablets may use. */
const addressesOf = ({ host }: Options, machine: Machine): readonly string[] =>
  host === '0.0.0.0' || host === '::' ? homeAddresses(machine.interfaces()) : [host];

/** A machine's name as routers and multicast DNS know it. */
function localNames(hostName: string): readonly string[] {
  const [short = ''] = hostName.toLowerCase().split('.');
  return /^[a-z0-9-]+$/.test(short) ? [short, `${short}.local`] : [];
}

export interface OpenGuide {
  readonly url: string;
  readonly close: () => Promise<void>;
}

/** The plain page that leads a tablet to trust the home's authority, on a port of its own. */
export async function openGuide(
  network: HomeNetwork,
  options: Options,
  of: { readonly title: string; readonly appUrl: string },
): Promise<OpenGuide> {
  let url = '';
  const { authority } = network;
  const app = await buildGuide(() => ({ ...of, authority, guideUrl: url }));
  try {
    await app.listen({ host: options.host, port: options.guidePort });
  } catch (error) {
    throw listenFault(error, options.host, options.guidePort);
  }
  const { port } = app.server.address() as AddressInfo;
  url = `http://${inUrl(network.address)}:${port}`;
  return { url, close: () => app.close() };
}
