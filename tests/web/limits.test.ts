import { connect, type Socket } from 'node:net';
import { Writable } from 'node:stream';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { testApp, type TestApp } from '../support/app.js';

/** What a stranger may send before anybody looks at it, tried over a real connection; and what is told when something breaks. */

let app: TestApp;
let port: number;
const log: string[] = [];
beforeAll(async () => {
  const stream = new Writable({
    write(chunk: Buffer, _encoding, done) {
      log.push(chunk.toString());
      done();
    },
  });
  app = await testApp({ logger: { level: 'info', stream } });
  app.server.get('/breaks', { config: { access: 'come-in' } }, () => {
    throw new Error('MARKER of a route, SELECT * FROM person, /srv/rungwise/src/x.ts:1');
  });
  await app.server.listen({ port: 0, host: '127.0.0.1' });
  port = (app.server.server.address() as { port: number }).port;
});
afterAll(() => app.close());

/** Sends bytes as they are. @returns what came back until the other side closed */
function raw(first: string, then?: (socket: Socket) => void): Promise<string> {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1');
    let answer = '';
    socket.on('data', (bytes: Buffer) => (answer += bytes.toString()));
    socket.on('error', () => undefined);
    socket.on('close', () => resolve(answer));
    socket.write(first);
    then?.(socket);
  });
}

const head = (line: string, headers = ''): string => `${line} HTTP/1.1\r\nhost: 127.0.0.1\r\nconnection: close\r\n${headers}\r\n`;
const statusOf = (answer: string): number => Number(/^HTTP\/1\.1 (\d{3})/.exec(answer)?.[1]);

describe('what is too long', () => {
  it.each([
    ['an address of 20,000 letters', head(`GET /${'a'.repeat(20_000)}`), 431],
    ['an address of 15,000 letters', head(`GET /${'a'.repeat(15_000)}`), 404],
    ['a header of 20,000 letters', head('GET /about', `x-long: ${'a'.repeat(20_000)}\r\n`), 431],
    ['cookies of 20,000 letters', head('GET /about', `cookie: ${'a=b; '.repeat(4_000)}\r\n`), 431],
    ['5,000 headers', head('GET /about', Array.from({ length: 5000 }, (_, at) => `a${at}: b\r\n`).join('')), 431],
    ['a part of an address of 101 letters', head(`GET /join/${'a'.repeat(101)}`), 404],
    ['an address that cannot be taken apart', head('GET /%aaaaa%ff%'), 404],
    ['a method that is none', head('STEAL /about'), 400],
    ['what is no HTTP at all', 'hello\r\n\r\n', 400],
  ])('%s is refused, and the next one is served', async (_what, text, status) => {
    const answer = await raw(text);
    expect(statusOf(answer)).toBe(status);
    if (status === 404) expect(answer).toMatch(/\r\ncontent-security-policy: default-src 'none'/i);
    expect(answer).not.toContain('aaaaa');
    expect(answer).not.toMatch(/node_modules|\bat \w+ \(|Parse Error/);
    expect(statusOf(await raw(head('GET /about')))).toBe(200);
  });

  it('a body over the limit is refused by its length alone, before any of it is sent', async () => {
    const answer = await raw(head('POST /start', `content-type: application/x-www-form-urlencoded\r\ncontent-length: ${50e6}\r\n`));
    expect(statusOf(answer)).toBe(413);
  });

  it('a body without a length is cut at the limit and not gathered', async () => {
    const before = process.memoryUsage().rss;
    const piece = Buffer.alloc(65_536, 'a');
    const answer = await raw(
      head('POST /start', 'content-type: application/x-www-form-urlencoded\r\ntransfer-encoding: chunked\r\n'),
      (socket) => {
        let sent = 0;
        const more = (): void => {
          while (sent < 50e6 && !socket.destroyed) {
            sent += piece.length;
            if (!socket.write(Buffer.concat([Buffer.from(`${piece.length.toString(16)}\r\n`), piece, Buffer.from('\r\n')]))) break;
          }
        };
        socket.on('drain', more);
        more();
      },
    );
    expect(statusOf(answer)).toBe(413);
    expect(process.memoryUsage().rss - before).toBeLessThan(20e6);
  });
});

describe('who sends too slowly', () => {
  it('has half a minute for a whole request', () => {
    expect([app.server.server.requestTimeout, app.server.server.headersTimeout <= 60_000]).toEqual([30_000, true]);
  });

  it('is cut off, while others are served', async () => {
    // The same limits in small, so that nobody has to wait.
    const { requestTimeout, headersTimeout } = app.server.server;
    Object.assign(app.server.server, { requestTimeout: 1000, headersTimeout: 1000 });
    try {
      const drip = (start: string): Promise<string> =>
        raw(start, (socket) => {
          const timer = setInterval(() => (socket.destroyed ? clearInterval(timer) : socket.write('a')), 100);
        });
      const headers = drip('GET / HTTP/1.1\r\nhost: a\r\nx-slow: ');
      const body = drip(head('POST /start', 'content-type: application/x-www-form-urlencoded\r\ncontent-length: 10000\r\n'));
      const idle = Array.from({ length: 200 }, () => raw('GET / HT'));
      const start = Date.now();
      expect(statusOf(await raw(head('GET /about')))).toBe(200);
      expect(Date.now() - start).toBeLessThan(5000);
      expect((await Promise.all([headers, body, ...idle])).filter((answer) => ![408, Number.NaN].includes(statusOf(answer)))).toEqual([]);
    } finally {
      Object.assign(app.server.server, { requestTimeout, headersTimeout });
    }
  });
});

describe('what breaks', () => {
  const noInsides = /MARKER|SELECT|node_modules|\bat \w+ \(|\.ts:\d+|srv\/rungwise/;

  it('in a route is told by a reference alone, under which the log has the rest', async () => {
    log.length = 0;
    const { status, text, headers } = await app.visitor().get('/breaks');
    expect(status).toBe(500);
    expect(text + JSON.stringify(headers)).not.toMatch(noInsides);
    const reference = /[0-9a-f]{6}-[0-9a-z]+/.exec(text)?.[0] ?? 'none';
    const line = log.find((one) => one.includes('MARKER of a route')) ?? '';
    expect(line).toContain(reference);
  });

  it('in a query is told no more, with its text and its values', async () => {
    const candidate = await app.candidate();
    log.length = 0;
    const failed = Object.assign(new Error('MARKER: column "secret" of relation "person" does not exist'), {
      code: '42703',
      detail: 'MARKER detail',
      query: 'SELECT secret FROM person',
    });
    const spy = vi.spyOn(app.db.pool, 'query');
    spy.mockImplementation(() => Promise.reject(failed));
    const { status, text, headers } = await candidate.get('/progress').finally(() => spy.mockRestore());
    expect(status).toBe(500);
    expect(text + JSON.stringify(headers)).not.toMatch(noInsides);
    expect(log.join('')).toContain('MARKER: column');
    expect((await candidate.get('/progress')).status).toBe(200);
  });
});
