import { createServer } from 'node:http';
import { createServer as createSecureServer } from 'node:https';
import type { SecureContextOptions } from 'node:tls';
import cookie from '@fastify/cookie';
import rateLimit from '@fastify/rate-limit';
import Fastify, { type FastifyInstance } from 'fastify';
import type { Group } from './group/group.ts';
import { addAccess } from './http/access.ts';
import { addAppFiles } from './http/app-files.ts';
import { addFaults } from './http/faults.ts';
import { addFences } from './http/fences.ts';
import { addRequestLog, type LogLevel, type LogTarget, logOptions } from './http/log.ts';
import { addSecurityHeaders } from './http/security-headers.ts';
import { LiveHub } from './live/hub.ts';
import type { Parts } from './parts.ts';
import { addAccounts } from './routes/accounts.ts';
import { addCalendar } from './routes/calendar.ts';
import { addDevices } from './routes/devices.ts';
import { addGroup, addUsedElsewhere } from './routes/group.ts';
import { addHealthz } from './routes/healthz.ts';
import { addLive, HEARTBEAT_MS } from './routes/live.ts';
import { addMe } from './routes/me.ts';
import { addPin } from './routes/pin.ts';
import { addSignIn } from './routes/sign-in.ts';
import { addSignOut } from './routes/sign-out.ts';
import { addSync } from './routes/sync.ts';
import type { HomeReader } from './service/home-reader.ts';

export interface Setting {
  /** The built app; without it the server answers calls only. */
  readonly appFolder?: string;
  /** Names, lower case, under which this server may be addressed beside bare addresses. */
  readonly names?: ReadonlySet<string>;
  /** The only machines whose X-Forwarded-* is believed. */
  readonly proxies?: readonly string[];
  /** Serves TLS with this. */
  readonly tls?: SecureContextOptions;
  readonly log?: { readonly level: LogLevel; readonly target: LogTarget };
  /** A calendar feed, for whoever has its key. */
  readonly calendar?: { readonly reader: HomeReader; readonly key: string };
  /** The homes with which this one shares which codes are used. */
  readonly group?: Group;
  /** ms between signs of life on /live. */
  readonly heartbeat?: number;
}

/** Of everything but a sync: sign-ins, names. */
const BODY_BYTES = 16 * 1024;

/** The server, ready to listen. Closing it closes no store: who opened them does. */
export async function buildApp(parts: Parts, setting: Setting = {}): Promise<FastifyInstance> {
  const { tls, proxies = [], log } = setting;
  const app = Fastify({
    forceCloseConnections: true,
    bodyLimit: BODY_BYTES,
    trustProxy: proxies.length > 0 ? [...proxies] : false,
    serverFactory: (handler) =>
      tls ? createSecureServer({ ...tls, minVersion: 'TLSv1.2' }, handler) : createServer(handler),
    ...logOptions(log?.level ?? 'silent', log?.target ?? process.stderr),
  });
  await app.register(cookie);
  await addSecurityHeaders(app);
  addFences(app, setting.names ?? new Set());
  addAccess(app, parts);
  addFaults(app);
  addRequestLog(app);
  // Each try costs 64 MiB and three passes of a processor: this many a minute from one address.
  await app.register(rateLimit, { global: false, max: 60, timeWindow: 60_000 });
  addRoutes(app, parts, setting);
  await addAppFiles(app, setting.appFolder);
  return app;
}

function addRoutes(app: FastifyInstance, parts: Parts, setting: Setting): void {
  const hub = new LiveHub();
  addHealthz(app, parts);
  addSignIn(app, parts);
  addSignOut(app, parts);
  addMe(app);
  addPin(app, parts);
  addAccounts(app, parts);
  addDevices(app, parts, hub);
  addSync(app, parts, { hub, ...(setting.group && { grown: () => setting.group?.check.soon() }) });
  addUsedElsewhere(app, setting.group);
  if (setting.group !== undefined) addGroup(app, setting.group);
  if (setting.calendar !== undefined) addCalendar(app, parts, setting.calendar);
  addLive(app, parts, { hub, heartbeat: setting.heartbeat ?? HEARTBEAT_MS });
}
