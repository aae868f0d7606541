import { existsSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { carriedPolicies } from '../../../policies/carried.ts';
import { buildApp, type Setting } from '../app.ts';
import { demoSignIns } from '../demo/settle.ts';
import type { Group } from '../group/group.ts';
import { openGroup } from '../group/open.ts';
import { inUrl } from '../home-network/addresses.ts';
import { errorLine } from '../http/log.ts';
import { openGateway } from '../intake/gateway.ts';
import { openNotices } from '../notices/open.ts';
import type { Parts } from '../parts.ts';
import { HomeReader } from '../service/home-reader.ts';
import { type Begun, begin } from './begin.ts';
import { holdFolder, moveAside, places, prepareFolder } from './data-folder.ts';
import { listenFault } from './faults.ts';
import { type HomeNetwork, openGuide, openHomeNetwork } from './home-network.ts';
import { houseKeeper, type Secured } from './keep-house.ts';
import type { Machine } from './machine.ts';
import type { Options } from './options.ts';
import { type HomeTold, words } from './words.ts';

export interface Running {
  readonly url: string;
  readonly guideUrl?: string;
  readonly parts: Parts;
  readonly stop: () => Promise<void>;
}

/** What was opened, to be closed the other way round. */
class Closing {
  private readonly works: (() => void | Promise<void>)[] = [];
  add(work: () => void | Promise<void>): void {
    this.works.push(work);
  }
  async all(): Promise<void> {
    for (const work of this.works.splice(0).reverse()) await work();
  }
}

/** Everything from an empty folder to a server that listens. Throws a StartFault that can be told. */
export async function serve(options: Options, machine: Machine): Promise<Running> {
  const closing = new Closing();
  try {
    return await start(options, machine, closing);
  } catch (error) {
    await closing.all();
    throw error;
  }
}

async function start(options: Options, machine: Machine, closing: Closing): Promise<Running> {
  const aside = options.fresh ? setAside(options, machine) : undefined;
  prepareFolder(options.data);
  const hold = holdFolder(options.data, machine.pid);
  closing.add(hold.release);
  const begun = await begin(options, machine);
  closing.add(begun.close);
  const { title } = begun.parts.accounts.settings;
  const network = options.homeNetwork ? await openHomeNetwork(options, machine, title) : undefined;
  const { zone } = begun.parts.accounts.settings;
  const reader = new HomeReader(begun.parts.ledger.store, { zone, policies: carriedPolicies() });
  const group = openGroup(begun.parts, reader, options.group);
  const app = await buildApp(begun.parts, settingOf(options, machine, { network, reader, group }));
  closing.add(() => app.close());
  const url = await listen(app, options, network);
  hold.say(url);
  if (options.mllpPort !== undefined) {
    const port = options.mllpPort;
    const onStranger = (why: string) => app.log.error({ gateway: why }, 'connection ended');
    const gateway = await openGateway(begun.parts, reader, { port, onStranger }).catch(
      (error: unknown) => {
        throw listenFault(error, '127.0.0.1', port);
      },
    );
    closing.add(gateway.close);
  }
  if (group) closing.add(group.check.keepLooking((error) => noteFault(machine, error)));
  const notices = openNotices(begun.parts, reader, options, (error) => noteFault(machine, error));
  if (notices) closing.add(notices);
  const guide = network && (await openGuide(network, options, { title, appUrl: url }));
  if (guide) closing.add(guide.close);
  const secured = network && { network, server: app.server as unknown as Secured['server'] };
  closing.add(houseKeeper(begun.parts, secured, (error) => noteFault(machine, error)));
  const home = network && guide && { ...told(network), guideUrl: guide.url };
  tell(options, machine, {
    url,
    begun,
    ...(aside !== undefined && { aside }),
    ...(home && { home }),
  });
  return {
    url,
    parts: begun.parts,
    stop: () => closing.all(),
    ...(guide && { guideUrl: guide.url }),
  };
}

const told = ({ fingerprint, replaced }: HomeNetwork) => ({ fingerprint, replaced });

function setAside(options: Options, machine: Machine): string | undefined {
  prepareFolder(options.data);
  // Not while another server writes to it.
  holdFolder(options.data, machine.pid).release();
  return moveAside(options.data, machine.now());
}

interface Opened {
  readonly network: HomeNetwork | undefined;
  readonly reader: HomeReader;
  readonly group: Group | undefined;
}

function settingOf(
  options: Options,
  machine: Machine,
  { network, reader, group }: Opened,
): Setting {
  const { calendarKey: key } = options;
  return {
    appFolder: machine.appFolder,
    names: new Set([...options.names, ...(network?.names ?? [])]),
    proxies: options.proxies,
    log: { level: options.log, target: machine.log },
    ...(network && { tls: network.tls }),
    ...(group && { group }),
    ...(key !== undefined && { calendar: { reader, key } }),
  };
}

const everywhere = new Set(['0.0.0.0', '::']);
const itself = new Set(['127.0.0.1', '::1', 'localhost']);

/** Listens, and says under which address to open the app. */
async function listen(
  app: FastifyInstance,
  { host, port }: Options,
  network: HomeNetwork | undefined,
): Promise<string> {
  try {
    await app.listen({ host, port });
  } catch (error) {
    throw listenFault(error, host, port);
  }
  const bound = (app.server.address() as AddressInfo).port;
  const shown = network?.address ?? (everywhere.has(host) || itself.has(host) ? 'localhost' : host);
  return `${network ? 'https' : 'http'}://${inUrl(shown)}:${bound}`;
}

interface Happened {
  readonly url: string;
  readonly begun: Begun;
  readonly aside?: string;
  readonly home?: HomeTold;
}

function tell(options: Options, machine: Machine, { begun, ...happened }: Happened): void {
  const { manager, parts } = begun;
  const told = {
    ...happened,
    title: parts.accounts.settings.title,
    data: options.data,
    demo: demoSignIns(places(options.data).demo),
    openInClear: !options.homeNetwork && !itself.has(options.host) && options.proxies.length === 0,
    withoutApp: !existsSync(join(machine.appFolder, 'index.html')),
    ...(manager && { manager }),
  };
  machine.say(words(told, machine.isTerminal));
}

const noteFault = (machine: Machine, error: unknown): void =>
  machine.log.write(`${JSON.stringify({ level: 50, err: errorLine(error as Error) })}\n`);
