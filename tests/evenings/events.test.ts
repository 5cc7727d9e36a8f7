import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { App } from '../../src/web/app.js';
import { listen } from '../browser/device.js';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { chooseIn, classOf, held, makeEvening, type TestClass } from '../support/evenings.js';

/** Streams of changes over real connections: what they tell, when they end, and that a server can stop with them. */

let app: TestApp;
let own: TestClass;
let address: string;
let evening: string;
let at: ReturnType<typeof held>;
const opened: Stream[] = [];
beforeAll(async () => {
  app = await testApp({ start: '2026-11-25T19:00:00Z' });
  own = await classOf(app);
  address = await listen(app);
});
afterEach(() => opened.splice(0).forEach((stream) => stream.leave()));
afterAll(() => app.close());

async function begin(): Promise<void> {
  evening = await makeEvening(own, { questions: 'AA-01-001 BB-01-001' });
  at = held(own, evening);
  await at.press('next');
}

const cookiesOf = (visitor: Visitor): string => [...visitor.cookies].map(([name, value]) => `${name}=${value}`).join('; ');

class Stream {
  text = '';
  ended = false;
  private readonly stop = new AbortController();
  private constructor(
    readonly status: number,
    readonly headers: Headers,
  ) {}

  static async open(visitor: Visitor, path: string, base = address): Promise<Stream> {
    const stop = new AbortController();
    const answer = await fetch(base + path, { headers: { cookie: cookiesOf(visitor), accept: 'text/event-stream' }, signal: stop.signal });
    const stream = new Stream(answer.status, answer.headers);
    stop.signal.addEventListener('abort', () => undefined);
    stream.stop.signal.addEventListener('abort', () => stop.abort());
    void stream.read(answer);
    opened.push(stream);
    return stream;
  }

  private async read(answer: Response): Promise<void> {
    try {
      for await (const chunk of answer.body ?? []) this.text += Buffer.from(chunk).toString();
    } catch {
      // Left by ourselves.
    }
    this.ended = true;
  }

  leave(): void {
    this.stop.abort();
  }

  /** What it was told, in turn. */
  get told(): string[] {
    return [...this.text.matchAll(/^data: (.*)$/gm)].map(([, data]) => data ?? '');
  }

  async until(holds: (stream: Stream) => boolean, milliseconds = 4000): Promise<void> {
    for (const end = Date.now() + milliseconds; !holds(this); await wait(20))
      if (Date.now() > end) throw new Error(`not in time: ${JSON.stringify(this.text)}`);
  }
}

const ofPhone = (visitor: Visitor, base?: string): Promise<Stream> => Stream.open(visitor, `/evening/${evening}/events`, base);
const ofTutor = (base?: string): Promise<Stream> => Stream.open(own.tutor, `${at.root}/events`, base);

describe('a stream', () => {
  it('says at once where the evening stands, then each change, and how many answered to the tutor alone', async () => {
    await begin();
    const odo = await own.member('Odo');
    const [phone, screen] = [await ofPhone(odo), await ofTutor()];
    expect(phone.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
    expect([phone.headers.get('cache-control'), phone.headers.get('x-accel-buffering')]).toEqual(['no-store', 'no']);
    expect(phone.headers.get('content-security-policy')).toContain("default-src 'none'");
    await phone.until(({ told }) => told.length === 1);
    expect(phone.text).toMatch(/^retry: 3000\n\n/);
    const before = Date.now();
    await at.press('open');
    await phone.until(({ told }) => told.length === 2);
    // A step on the same server is told at once and not at the next look.
    expect(Date.now() - before).toBeLessThan(900);
    await chooseIn(odo, evening, 'B');
    await screen.until(({ told }) => told.at(-1)?.endsWith(' 1') === true);
    await at.press('close');
    await at.press('show');
    await phone.until(({ told }) => told.length === 4);
    const [row] = await app.rows<{ change: number }>('SELECT change FROM evening WHERE id = $1', [evening]);
    expect(phone.told.at(-1)).toBe(String(row?.change));
    // Not a byte but numbers: no key, no choice, no count for a candidate.
    expect(phone.text).toMatch(/^retry: 3000\n\n(data: \d+\n\n|:\n\n)*$/);
    expect(screen.text).toMatch(/^retry: 3000\n\n(data: \d+ \d+\n\n|:\n\n)*$/);
    expect(screen.told.at(-1)).toBe(`${row?.change} 1`);
  });

  it('is told by one server what was pressed on another', async () => {
    await begin();
    const odo = await own.member('Odo');
    const other = await app.another();
    const there = await listen(other as App);
    const phone = await ofPhone(odo, there);
    await phone.until(({ told }) => told.length === 1);
    await at.press('open');
    await phone.until(({ told }) => told.length === 2, 2500);
    expect(phone.ended).toBe(false);
  });

  it('ends after a last word with the evening, and one that is over tells browsers not to come again', async () => {
    await begin();
    const odo = await own.member('Odo');
    const phone = await ofPhone(odo);
    await phone.until(({ told }) => told.length === 1);
    await at.press('end');
    await phone.until(({ ended }) => ended);
    expect(phone.told).toHaveLength(2);
    expect([(await ofPhone(odo)).status, (await ofTutor()).status]).toEqual([204, 204]);
  });

  it('ends for a member who is removed, with the next change and without being told of it', async () => {
    await begin();
    const [odo, tansy] = [await own.member('Odo'), await own.member('Tansy')];
    const [his, hers] = [await ofPhone(odo), await ofPhone(tansy)];
    for (const stream of [his, hers]) await stream.until(({ told }) => told.length === 1);
    await app.rows(`DELETE FROM class_member WHERE person_id = (SELECT max(id) FROM person WHERE display_name = 'Odo')`);
    await at.press('open');
    await his.until(({ ended }) => ended);
    await hers.until(({ told }) => told.length === 2);
    expect([his.told.length, hers.ended]).toEqual([1, false]);
  });

  it('ends with the session it was opened in', async () => {
    await begin();
    const odo = await own.member('Odo');
    const [phone, screen] = [await ofPhone(odo), await ofTutor()];
    for (const stream of [phone, screen]) await stream.until(({ told }) => told.length === 1);
    await odo.submit(await odo.get('/me'), '/me/sign-out');
    await at.press('open');
    await phone.until(({ ended }) => ended);
    await screen.until(({ told }) => told.length === 2);
    expect([phone.told.length, screen.ended]).toEqual([1, false]);
  });

  it('is refused to a person who has four, in words that a script can do without, and given again when one has gone', async () => {
    await begin();
    const odo = await own.member('Odo');
    const four = [await ofPhone(odo), await ofPhone(odo), await ofPhone(odo), await ofPhone(odo)];
    expect(four.map(({ status }) => status)).toEqual([200, 200, 200, 200]);
    const fifth = await ofPhone(odo);
    expect([fifth.status, fifth.headers.get('retry-after')]).toEqual([503, '60']);
    four[0]?.leave();
    let again = await ofPhone(odo);
    for (const end = Date.now() + 3000; again.status !== 200 && Date.now() < end; await wait(50)) again = await ofPhone(odo);
    expect(again.status).toBe(200);
  });

  it('is no page: asked with HEAD it does not begin one', async () => {
    await begin();
    const odo = await own.member('Odo');
    const answer = await fetch(`${address}/evening/${evening}/events`, { method: 'HEAD', headers: { cookie: cookiesOf(odo) } });
    expect([404, 405]).toContain(answer.status);
  });
});

describe('a server that stops', () => {
  it('ends its streams and has closed within a second', async () => {
    await begin();
    const odo = await own.member('Odo');
    const other = await app.another();
    const there = await listen(other as App);
    const streams = [await ofPhone(odo, there), await ofTutor(there)];
    for (const stream of streams) await stream.until(({ told }) => told.length === 1);
    const before = Date.now();
    await other.server.close();
    expect(Date.now() - before).toBeLessThan(1000);
    for (const stream of streams) await stream.until(({ ended }) => ended);
  });
});
