import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import type { LogLevel } from '../http/log.ts';
import { type GroupOptions, groupOptions } from './group-options.ts';

export interface Options {
  readonly host: string;
  readonly port: number;
  /** Absolute path of the folder that holds everything. */
  readonly data: string;
  /** Serve the home's network over TLS with a certificate of its own. */
  readonly homeNetwork: boolean;
  /** Port of the plain page that leads a tablet to trust that certificate. */
  readonly guidePort: number;
  readonly proxies: readonly string[];
  readonly names: readonly string[];
  readonly log: LogLevel;
  /** Move what is there aside and begin anew. */
  readonly fresh: boolean;
  /** Begin without the invented home: a real service. */
  readonly empty: boolean;
  /** Name of the first manager of a real service. */
  readonly manager: string | undefined;
  readonly title: string | undefined;
  readonly zone: string | undefined;
  /** Port on the loopback at which a gateway hands over HL7 messages. */
  readonly mllpPort: number | undefined;
  /** Whom to write to when something needs somebody. */
  readonly notify: readonly string[];
  readonly mailFrom: string | undefined;
  /** With user and password: from the environment only, so that no list of processes shows it. */
  readonly smtp: string | undefined;
  readonly calendarKey: string | undefined;
  readonly group: GroupOptions | undefined;
  readonly help: boolean;
}

export type OptionsRead =
  | { readonly ok: true; readonly options: Options }
  | { readonly ok: false; readonly message: string };

const DEFAULT_PORT = 8240;

export const HELP = `npm start -- [options]

  --home-network       serve tablets in the home over HTTPS, with a certificate of its own
  --port NUMBER        port to listen on (${DEFAULT_PORT})             TALLYROUND_PORT
  --host ADDRESS       address to listen on (127.0.0.1)       TALLYROUND_HOST
  --data FOLDER        where everything is kept (./data)      TALLYROUND_DATA
  --guide-port NUMBER  port of the page that gets a tablet ready (one more than --port)
  --proxy ADDRESS      believe this reverse proxy and no other; may be repeated
  --name NAME          a name under which the server is reached; may be repeated
  --fresh              begin anew; what is there is moved aside, not deleted
  --empty              begin a real service, without the invented home
  --manager NAME       the first manager of a real service
  --title TEXT         what the service calls itself
  --zone ZONE          its time zone, such as Europe/London
  --mllp-port NUMBER   take HL7 results from a gateway on this machine (loopback only)
  --notify ADDRESS     write to this address when something needs somebody; may be repeated
  --mail-from ADDRESS  from which address                     TALLYROUND_SMTP: the mail server
                       TALLYROUND_CALENDAR_KEY: a key of 20 signs or more opens /calendar.ics
  --group-peer URL     another home of the group, asked whether it used a code; may be repeated
  --group-secret FILE  the group's secret, drawn by: tallyround group-secret FILE
  --group-authority FILE  certificate of a home that has its own (--home-network); may be repeated
  --log LEVEL          silent, error or info (error)          TALLYROUND_LOG
`;

const shape = {
  host: { type: 'string' },
  port: { type: 'string' },
  data: { type: 'string' },
  'home-network': { type: 'boolean', default: false },
  'guide-port': { type: 'string' },
  proxy: { type: 'string', multiple: true },
  name: { type: 'string', multiple: true },
  log: { type: 'string' },
  'mllp-port': { type: 'string' },
  notify: { type: 'string', multiple: true },
  'mail-from': { type: 'string' },
  'group-peer': { type: 'string', multiple: true },
  'group-secret': { type: 'string' },
  'group-authority': { type: 'string', multiple: true },
  fresh: { type: 'boolean', default: false },
  empty: { type: 'boolean', default: false },
  'no-demo': { type: 'boolean', default: false },
  manager: { type: 'string' },
  title: { type: 'string' },
  zone: { type: 'string' },
  help: { type: 'boolean', short: 'h', default: false },
} as const;

type Env = Readonly<Record<string, string | undefined>>;

/** Options from the command line, then from the environment, then as they usually are. */
export function readOptions(args: readonly string[], env: Env, cwd: string): OptionsRead {
  let values: ReturnType<typeof parse>;
  try {
    values = parse(args);
  } catch (error) {
    return { ok: false, message: `${(error as Error).message}\n\n${HELP}` };
  }
  const port = portOf('--port', values.port ?? env['TALLYROUND_PORT'] ?? String(DEFAULT_PORT));
  if (typeof port === 'string') return { ok: false, message: port };
  const guidePort = portOf(
    '--guide-port',
    values['guide-port'] ?? String(port === 0 ? 0 : port + 1),
  );
  if (typeof guidePort === 'string') return { ok: false, message: guidePort };
  const mllpPort =
    values['mllp-port'] === undefined ? undefined : portOf('--mllp-port', values['mllp-port']);
  if (typeof mllpPort === 'string') return { ok: false, message: mllpPort };
  const smtp = env['TALLYROUND_SMTP'];
  if ((values.notify?.length ?? 0) > 0 && (smtp === undefined || values['mail-from'] === undefined))
    return {
      ok: false,
      message: '--notify needs --mail-from, and the mail server in TALLYROUND_SMTP.',
    };
  const calendarKey = env['TALLYROUND_CALENDAR_KEY'];
  if (calendarKey !== undefined && calendarKey.length < 20)
    return { ok: false, message: 'TALLYROUND_CALENDAR_KEY: 20 signs or more, drawn by chance.' };
  const group = groupOptions(values, cwd);
  if (typeof group === 'string') return { ok: false, message: group };
  const log = values.log ?? env['TALLYROUND_LOG'] ?? 'error';
  if (!isLevel(log)) return { ok: false, message: `--log ${log}: say silent, error or info.` };
  const homeNetwork = values['home-network'];
  const host = values.host ?? env['TALLYROUND_HOST'] ?? (homeNetwork ? '0.0.0.0' : '127.0.0.1');
  return {
    ok: true,
    options: {
      host,
      port,
      guidePort,
      homeNetwork,
      log,
      data: resolve(cwd, values.data ?? env['TALLYROUND_DATA'] ?? 'data'),
      proxies: list(values.proxy, env['TALLYROUND_PROXY']),
      names: list(values.name, env['TALLYROUND_NAME']).map((name) => name.toLowerCase()),
      fresh: values.fresh,
      empty: values.empty || values['no-demo'],
      manager: values.manager,
      title: values.title,
      zone: values.zone ?? env['TALLYROUND_ZONE'],
      mllpPort,
      notify: list(values.notify, undefined),
      mailFrom: values['mail-from'],
      smtp,
      calendarKey,
      group,
      help: values.help,
    },
  };
}

const parse = (args: readonly string[]) =>
  parseArgs({ args: [...args], options: shape, allowPositionals: false }).values;

/** A port, or what is wrong with it. 0 lets the machine choose one. */
function portOf(option: string, text: string): number | string {
  const port = Number(text);
  return /^\d{1,5}$/.test(text) && port <= 65_535
    ? port
    : `${option} ${text}: a port is a number from 0 to 65535.`;
}

const isLevel = (text: string): text is LogLevel => ['silent', 'error', 'info'].includes(text);

const list = (given: readonly string[] | undefined, env: string | undefined): readonly string[] =>
  (given ?? (env === undefined ? [] : [env])).flatMap((each) =>
    each
      .split(',')
      .map((part) => part.trim())
      .filter((part) => part !== ''),
  );
