import { createServer, type Server, type Socket } from 'node:net';

/** MLLP block signs (HL7 v2 transport specification, minimal lower layer protocol, release 1). */
const START = 0x0b;
const END = 0x1c;
const CR = 0x0d;
const LF = 0x0a;

/** A message of a laboratory is some kilobytes. */
const MOST_BYTES = 4 * 1024 * 1024;
const MOST_CONNECTIONS = 8;
const IDLE_MS = 5 * 60_000;

export type Answered = 'AA' | 'AE' | 'AR';

/** Why a connection was ended: something stood outside a block, or a block was too great. */
export type Stranger = 'not-mllp' | 'too-large';

export interface MllpOptions {
  readonly port: number;
  /** What is to be said to one message: taken, could not be taken now, not wanted. */
  readonly onMessage: (
    text: string,
  ) => Promise<{ readonly code: Answered; readonly detail: string }>;
  /** A connection was ended: a closed word, and nothing of what came over it. */
  readonly onStranger: (why: Stranger) => void;
  readonly now: () => number;
}

export interface Listener {
  readonly port: number;
  readonly close: () => Promise<void>;
}

/**
 * Listens for messages of a gateway on this machine itself: MLLP has no encryption and no sign-in, so
 * it never leaves the loopback. Each message is answered once it is kept, one after another.
 */
export async function listenMllp({ port, ...handling }: MllpOptions): Promise<Listener> {
  const sockets = new Set<Socket>();
  const server: Server = createServer((socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
    socket.on('error', () => socket.destroy());
    socket.setTimeout(IDLE_MS, () => socket.destroy());
    serve(socket, handling);
  });
  server.maxConnections = MOST_CONNECTIONS;
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen({ host: '127.0.0.1', port }, resolve);
  });
  const bound = server.address();
  return {
    port: typeof bound === 'object' && bound !== null ? bound.port : port,
    close: () =>
      new Promise((resolve) => {
        for (const socket of sockets) socket.destroy();
        server.close(() => resolve());
      }),
  };
}

/**
 * Outside blocks there are line ends and nothing else. Whatever else stands there is no gateway: any web
 * page opened on this machine reaches the loopback, and what it sends begins with the words of a call.
 */
function serve(socket: Socket, { onMessage, onStranger, now }: Omit<MllpOptions, 'port'>): void {
  let held: Buffer = Buffer.alloc(0);
  let working: Promise<void> = Promise.resolve();
  const end = (why: Stranger) => {
    // What comes from now on is let go unread; what was whole before is still answered.
    socket.off('data', take);
    socket.resume();
    held = Buffer.alloc(0);
    onStranger(why);
    working = working.then(() => void socket.end(() => socket.destroy()));
  };
  const take = (piece: Buffer) => {
    held = Buffer.concat([held, piece]);
    for (;;) {
      held = withoutLineEnds(held);
      if (held.length === 0) return;
      if (held[0] !== START) {
        end('not-mllp');
        return;
      }
      const close = held.indexOf(Buffer.from([END, CR]));
      if (close < 0) {
        if (held.length > MOST_BYTES) end('too-large');
        return;
      }
      const block = held.subarray(1, close);
      held = held.subarray(close + 2);
      working = working.then(async () => {
        const answer = await answerTo(block, onMessage, now());
        if (!socket.destroyed) socket.write(answer);
      });
    }
  };
  socket.on('data', take);
}

function withoutLineEnds(bytes: Buffer): Buffer {
  let from = 0;
  while (bytes[from] === CR || bytes[from] === LF) from += 1;
  return bytes.subarray(from);
}

async function answerTo(
  block: Buffer,
  onMessage: MllpOptions['onMessage'],
  now: number,
): Promise<Buffer> {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(block);
  } catch {
    return acknowledge('', 'AR', 'Not UTF-8. Send UNICODE UTF-8 (MSH-18).', now);
  }
  // A fault of ours is told as "not now", so that the gateway sends it again.
  const { code, detail } = await onMessage(text).catch(() => ({
    code: 'AE' as const,
    detail: 'Could not be kept. Send it again.',
  }));
  return acknowledge(text, code, detail, now);
}

/** ACK with the sender's own separators and message control id (MSA-2). */
function acknowledge(message: string, code: Answered, detail: string, now: number): Buffer {
  const msh = message.split(/[\r\n]/)[0] ?? '';
  const field = /^MSH[^\p{L}\p{N}\s]/u.test(msh) ? (msh[3] ?? '|') : '|';
  const fields = msh.split(field);
  const id = fields[9] ?? '';
  const encoding = field === '|' || fields[1] !== undefined ? (fields[1] ?? '^~\\&') : '^~\\&';
  const stamp = new Date(now).toISOString().replaceAll(/[-:T]|\.\d+Z$/g, '');
  const type = ['ACK', 'R01', 'ACK'].join(encoding[0] ?? '^');
  const plain = detail
    .replaceAll(/[\r\n]/g, ' ')
    .replaceAll(field, ' ')
    .slice(0, 200);
  const ack = [
    [
      'MSH',
      encoding,
      'TALLYROUND',
      '',
      fields[2] ?? '',
      fields[3] ?? '',
      `${stamp}+0000`,
      '',
      type,
      `A${now}`,
      'P',
      '2.5.1',
    ].join(field),
    ['MSA', code, id, plain].join(field),
  ].join('\r');
  return Buffer.concat([
    Buffer.from([START]),
    Buffer.from(`${ack}\r`, 'utf8'),
    Buffer.from([END, CR]),
  ]);
}
