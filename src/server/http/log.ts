import { type FastifyInstance, type FastifyServerOptions, LogController } from 'fastify';

export type LogLevel = 'silent' | 'error' | 'info';

/** Whatever takes a line of the log. */
export interface LogTarget {
  write(line: string): void;
}

/**
 * Logs are read by people who may see no health data, and are kept longer than anybody thinks: which
 * route (its pattern, not the address asked for), the answer's status, how long, which tablet. No
 * addresses of machines, names, bodies, cookies or keys. Of an error its kind and place, not its
 * words: those of a JSON parser quote what was sent.
 */
export function logOptions(level: LogLevel, stream: LogTarget): FastifyServerOptions {
  return {
    logController: new LogController({ disableRequestLogging: true }),
    logger: {
      level,
      stream,
      base: null,
      redact: { paths: ['req', 'res', 'headers', 'body', '*.headers', '*.body'], remove: true },
      serializers: { err: errorLine },
      hooks: { logMethod: wordless },
    },
  };
}

/** The logger would take an error's words for the line's own. */
function wordless(this: unknown, args: unknown[], method: (...args: unknown[]) => void): void {
  const [first, ...rest] = args;
  const err = first instanceof Error ? first : (first as { err?: unknown } | undefined)?.err;
  if (err instanceof Error) method.call(this, { err }, 'fault');
  else method.call(this, first, ...rest);
}

interface Thrown {
  readonly name?: string;
  readonly code?: unknown;
  readonly reason?: unknown;
  readonly stack?: string;
  readonly message?: string;
}

/** Typed as pino's, whose required fields are emptied rather than filled. */
export function errorLine(error: Thrown) {
  const frames = (error.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line));
  return {
    type: error.name ?? 'Error',
    message: '',
    stack: frames
      .slice(0, 8)
      .map((line) => line.trim())
      .join(' | '),
    ...(typeof error.code === 'string' && { code: error.code }),
    ...(typeof error.reason === 'string' && { reason: error.reason }),
  };
}

export function addRequestLog(app: FastifyInstance): void {
  app.addHook('onResponse', async (request, reply) => {
    request.log.info({
      method: request.method,
      route: request.routeOptions.url ?? 'none',
      status: reply.statusCode,
      ms: Math.round(reply.elapsedTime),
      ...(request.device && { device: request.device.id }),
    });
  });
}
