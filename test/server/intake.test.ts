import { createConnection } from 'node:net';
import fc from 'fast-check';
import Fastify from 'fastify';
import { SMTPServer } from 'smtp-server';
import { afterEach, describe, expect, it } from 'vitest';
import { carriedPolicies } from '../../policies/carried.ts';
import { tray } from '../../src/care/results/tray.ts';
import type { Day, Instant } from '../../src/care/time.ts';
import { recordResult } from '../../src/procedures/record-result.ts';
import { openGateway } from '../../src/server/intake/gateway.ts';
import { sendNotices } from '../../src/server/notices/mail.ts';
import { eventsIn, pendingIn } from '../../src/server/notices/pending.ts';
import { addCalendar } from '../../src/server/routes/calendar.ts';
import { HomeReader } from '../../src/server/service/home-reader.ts';
import { keepAsArrived, pen, serverDesk } from '../../src/server/service/write-facts.ts';
import { Trial } from '../trial/home.ts';
import { kitCode, plan, swab } from '../trial/round.ts';
import type { Home } from './home.ts';
import { startHome } from './home.ts';

const endings: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of endings.splice(0).reverse()) await end();
});

const message = (id = 'M1', more = '') =>
  [
    `MSH|^~\\&|LIS|DEMOLAB|TALLY|HOME|20261125091500+0000||ORU^R01^ORU_R01|${id}|P|2.5.1`,
    `PID|1||H1||Finch^Oriel||19410602|F${more}`,
    'OBR|1|R-100|L-77|94500-6^SARS-CoV-2 RNA^LN|||20261124|||||||||||||||20261125|||F',
    'OBX|1|CWE|94500-6^SARS-CoV-2 RNA^LN||10828004^Positive^SCT||||||F',
    'SPM|1|KQT00000019',
  ].join('\r');
const framed = (text: string) => Buffer.from(`\u000b${text}\r\u001c\r`, 'utf8');

interface Gateway {
  readonly home: Home;
  readonly reader: HomeReader;
  readonly port: number;
  /** What was said of connections that were ended. */
  readonly ended: string[];
}

async function gateway(): Promise<Gateway> {
  const home = await startHome();
  endings.push(home.stop);
  const { zone } = home.parts.accounts.settings;
  const reader = new HomeReader(home.parts.ledger.store, { zone, policies: carriedPolicies() });
  const ended: string[] = [];
  const onStranger = (why: string) => void ended.push(why);
  const listener = await openGateway(home.parts, reader, { port: 0, onStranger });
  endings.push(listener.close);
  return { home, reader, port: listener.port, ended };
}

/** Sends pieces as they are and answers so many acknowledgements. */
function talk(port: number, pieces: readonly Buffer[], answers: number): Promise<string[]> {
  return new Promise((resolve, reject) => {
    const socket = createConnection({ host: '127.0.0.1', port });
    let heard = '';
    socket.on('error', reject);
    socket.on('data', (piece) => {
      heard += piece.toString('utf8');
      const whole = heard.split('\u001c\r').slice(0, -1);
      if (whole.length < answers) return;
      socket.destroy();
      resolve(whole);
    });
    for (const piece of pieces) socket.write(piece);
  });
}

/** Sends pieces one by one and answers all that was said until the server ended the connection. */
function untilEnded(port: number, pieces: readonly Buffer[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = createConnection({ host: '127.0.0.1', port, noDelay: true });
    let heard = '';
    socket.setTimeout(5000, () => reject(new Error(`not ended; heard ${heard}`)));
    // What is written after the end is thrown back.
    socket.on('error', () => undefined);
    socket.on('close', () => {
      socket.setTimeout(0);
      resolve(heard);
    });
    socket.on('data', (piece) => (heard += piece.toString('utf8')));
    void (async () => {
      for (const piece of pieces) {
        if (socket.destroyed) return;
        socket.write(piece);
        await new Promise((next) => setTimeout(next, 1));
      }
    })();
  });
}

const bytesOf = (whole: Buffer): Buffer[] => [...whole].map((byte) => Buffer.from([byte]));

describe('a gateway on this machine', () => {
  it('hands a result over, and is told that it was kept; nobody here has its code, so it waits', async () => {
    const { reader, port } = await gateway();
    const [answer] = await talk(port, [framed(message())], 1);
    expect(answer).toContain('MSA|AA|M1|');
    const [waits] = tray(await reader.read());
    expect(waits).toMatchObject({ match: { reasons: ['code-unknown'] } });
    expect(waits?.received).toMatchObject({
      by: 'gateway',
      data: { source: 'hl7', outcome: 'positive' },
    });
  });
  it('the same message twice changes nothing, in pieces or together', async () => {
    const { reader, port } = await gateway();
    const whole = framed(message());
    await talk(port, [whole.subarray(0, 40), whole.subarray(40), framed(message('M2'))], 2);
    expect(tray(await reader.read())).toHaveLength(1);
  });
  it('takes nothing that stands in a call of a web page: the page reaches this port too', async () => {
    const { reader, port, ended } = await gateway();
    // As a browser sends it: request line, headers, and the block in the body.
    const url = `http://127.0.0.1:${port}/`;
    await expect(fetch(url, { method: 'POST', body: framed(message('W1')) })).rejects.toThrow();
    await expect(
      fetch(url, {
        method: 'POST',
        headers: { 'content-type': 'text/plain' },
        body: Buffer.concat([Buffer.from('x='), framed(message('W2'))]),
      }),
    ).rejects.toThrow();
    expect(tray(await reader.read())).toEqual([]);
    expect(ended).toEqual(['not-mllp', 'not-mllp']);
    const [answer] = await talk(port, [framed(message('M1'))], 1);
    expect(answer).toContain('MSA|AA|M1|');
  });
  it('ends such a call when it comes byte by byte too, at its first byte', async () => {
    const { reader, port, ended } = await gateway();
    const call = Buffer.from('POST / HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n');
    const heard = await untilEnded(port, bytesOf(Buffer.concat([call, framed(message('W3'))])));
    expect(heard).toBe('');
    expect(tray(await reader.read())).toEqual([]);
    expect(ended).toHaveLength(1);
  });
  it('ends at what stands between blocks, having answered the block before; line ends may stand there', async () => {
    const { reader, port, ended } = await gateway();
    const ends = Buffer.from('\r\n\n\r');
    const call = Buffer.from('GET / HTTP/1.1\r\n\r\n');
    const pieces = [
      ...bytesOf(Buffer.concat([ends, framed(message('M1')), ends])),
      framed(message('M2')),
      Buffer.concat([call, framed(message('W4', '|more'))]),
    ];
    const heard = await untilEnded(port, pieces);
    expect(heard).toContain('MSA|AA|M1|');
    expect(heard).toContain('MSA|AA|M2|');
    expect(heard).not.toContain('W4');
    expect(tray(await reader.read())).toHaveLength(1);
    expect(ended).toHaveLength(1);
    // In one piece with the block before it as well.
    const together = Buffer.concat([framed(message('M3')), call, framed(message('W5'))]);
    const again = await untilEnded(port, [together]);
    expect(again).toContain('MSA|AA|M3|');
    expect(again).not.toContain('W5');
  });
  it('a broken message is refused with its place, and the next one is taken', async () => {
    const { reader, port } = await gateway();
    const answers = await talk(
      port,
      [
        framed('MSH|^~\\&|X\rwhat is this'),
        framed('MSH#$~*@#A####20261125##ADT$A01#M9'),
        framed(message('M3')),
      ],
      3,
    );
    expect(answers[0]).toContain('MSA|AR|');
    expect(answers[1]).toContain('MSA#AR#M9#');
    expect(answers[2]).toContain('MSA|AA|M3|');
    expect(tray(await reader.read())).toHaveLength(1);
  });

  it('whatever bytes come, in whatever pieces, it stays up and takes the next message', async () => {
    const { reader, port } = await gateway();
    const sign = fc.constantFrom(0x0b, 0x1c, 0x0d, 0x7c, 0x5e, 0x4d, 0x53, 0x48, 0x00, 0xff, 0xc3);
    const noise = fc.uint8Array({ maxLength: 200 });
    const bytes = fc.oneof(
      noise,
      fc.array(sign, { maxLength: 200 }).map((each) => Uint8Array.from(each)),
    );
    // A message cut anywhere, with a sign of its changed, or with other separators.
    const whole = framed(message('M0'));
    const broken = fc
      .tuple(fc.nat(whole.length), fc.nat(whole.length - 1), fc.nat(255))
      .map(([end, at, byte]) => {
        const changed = Uint8Array.from(whole);
        changed[at] = byte;
        return changed.subarray(0, end);
      });
    let next = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(fc.oneof(bytes, broken), { maxLength: 6 }), async (pieces) => {
        next += 1;
        // What is left open by the noise is closed; what comes then is between blocks, and ends it.
        const closing = Buffer.from([0x1c, 0x0d, 0x78]);
        await untilEnded(port, [...pieces.map((p) => Buffer.from(p)), closing]);
        const [heard] = await talk(port, [framed(message(`G${next}`))], 1);
        return heard?.includes(`MSA|AA|G${next}|`) ?? false;
      }),
      { numRuns: Number(process.env['TALLYROUND_FUZZ'] ?? 60) },
    );
    // A changed sign may have made reports of its own; the whole message was kept once.
    const kept = tray(await reader.read()).filter(
      ({ received }) =>
        received.data.codes.includes('KQT00000019' as never) &&
        received.private?.name === 'Oriel Finch' &&
        received.private.number.startsWith('L-77'),
    );
    expect(kept.length).toBeGreaterThanOrEqual(1);
  });
});

describe('notices', () => {
  it('go to a real mail server, once, and say nothing of health or of anybody', async () => {
    const letters: string[] = [];
    const server = new SMTPServer({
      ...{ authOptional: true, disabledCommands: ['STARTTLS'], logger: false },
      onData: (stream, _session, done) => {
        let text = '';
        stream.on('data', (piece: Buffer) => (text += piece.toString('utf8')));
        stream.on('end', () => {
          letters.push(text);
          done();
        });
      },
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    endings.push(() => new Promise<void>((resolve) => server.close(() => resolve())));
    const bound = server.server.address();
    const smtp = `smtp://127.0.0.1:${typeof bound === 'object' && bound !== null ? bound.port : 0}`;

    const { reader, port } = await gateway();
    await talk(port, [framed(message())], 1);
    const home = await reader.read();
    const now = '2026-11-25T09:30:00.000Z' as Instant;
    const keys = new Set<string>();
    const told = {
      has: (key: string) => keys.has(key),
      add: (more: readonly string[]) => more.forEach((key) => keys.add(key)),
    };
    const mail = { smtp, from: 'tallyround@home.invalid', to: ['oncall@home.invalid'] };
    expect(pendingIn(home, now)).toHaveLength(1);
    expect(await sendNotices(home, now, { mail, told })).toBe(1);
    expect(await sendNotices(home, now, { mail, told })).toBe(0);
    expect(letters).toHaveLength(1);
    expect(letters[0]).toContain('Subject: Tallyround: something needs you');
    expect(letters[0]).not.toMatch(/positive|negative|virus|result|Finch|Oriel|KQT/i);
  });
  it('what could not be sent is tried again', async () => {
    const { reader, port } = await gateway();
    await talk(port, [framed(message())], 1);
    const keys = new Set<string>();
    const told = {
      has: (key: string) => keys.has(key),
      add: (more: readonly string[]) => more.forEach((key) => keys.add(key)),
    };
    const mail = { smtp: 'smtp://127.0.0.1:1', from: 'a@home.invalid', to: ['b@home.invalid'] };
    const now = '2026-11-25T09:30:00.000Z' as Instant;
    await expect(sendNotices(await reader.read(), now, { mail, told })).rejects.toThrow();
    expect(keys.size).toBe(0);
  });
});

describe('the calendar feed', () => {
  it('opens with its key as a password, never in the address, and else says nothing', async () => {
    const { home, reader } = await gateway();
    const key = 'a-key-drawn-by-chance-1';
    const app = Fastify();
    addCalendar(app, home.parts, { reader, key });
    const ask = (authorization?: string) =>
      app.inject({
        url: '/calendar.ics',
        ...(authorization !== undefined && { headers: { authorization } }),
      });
    const basic = (password: string) =>
      `Basic ${Buffer.from(`home:${password}`).toString('base64')}`;
    expect((await ask()).statusCode).toBe(401);
    expect((await ask(basic('wrong'))).body).toBe('');
    const opened = await ask(basic(key));
    expect(opened.statusCode).toBe(200);
    expect(opened.headers['content-type']).toContain('text/calendar');
    expect(opened.body).toContain('BEGIN:VCALENDAR');
  });

  it('says in no part of an event which test it is of or what is to be done, and keeps its id', async () => {
    const { trial, test } = positive();
    const { home, reader } = await gateway();
    const { ledger, random } = home.parts;
    // The server's own clock, so that what is due is due.
    home.clock.ms = Date.parse(trial.now);
    await keepAsArrived(
      ledger,
      pen([...trial.home.known.values()], await serverDesk(ledger, random)),
    );
    const events = eventsIn(await reader.read(), trial.now);
    expect(events.map(({ id }) => id)).toContain(`due-${test}-isolate`);
    const fetchFeed = async (): Promise<string> => {
      const key = 'a-key-drawn-by-chance-1';
      const app = Fastify();
      addCalendar(app, home.parts, { reader, key });
      const authorization = `Basic ${Buffer.from(`home:${key}`).toString('base64')}`;
      const { body } = await app.inject({ url: '/calendar.ics', headers: { authorization } });
      return body.replaceAll('\r\n ', '');
    };
    const feed = await fetchFeed();
    const ids = [...feed.matchAll(/^UID:(.*?)\r?$/gm)].map(([, id = '']) => id);
    expect(ids).toHaveLength(events.length);
    expect(new Set(ids).size).toBe(events.length);
    for (const id of ids) expect(id).toMatch(/^[\w-]{43}@tallyround\.invalid$/);
    for (const said of [test, 'isolate', 'contacts', 'due-', 'ends-'])
      expect(feed).not.toContain(said);
    expect(await fetchFeed()).toBe(feed);
  });
});

/** A home in which somebody's test came back positive, and nothing has been done about it yet. */
function positive(): { readonly trial: Trial; readonly test: string } {
  const trial = new Trial();
  trial.staff('Pia');
  trial.staff('Jonah');
  const oriel = trial.person('Oriel Finch', '1948-06-02');
  const test = swab(trial, plan(trial, [oriel]), oriel, kitCode(1));
  const result = {
    ...({ code: kitCode(1), how: 'scanned', outcome: 'positive', corrects: false } as const),
    ...({ reported: '2026-03-03' as Day, second: { is: 'born', value: '1948-06-02' } } as const),
  };
  trial.must(recordResult(trial.home, result, trial.doing));
  return { trial, test };
}
