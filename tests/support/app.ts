import { rm } from 'node:fs/promises';
import { parse, type HTMLElement } from 'node-html-parser';
import { ensureInstallation } from '../../src/accounts/index.js';
import type { Pack } from '../../src/core/pack.js';
import { packsService } from '../../src/packs/index.js';
import { openDatabase, type Db } from '../../src/platform/db.js';
import { enrolAll } from '../../src/study/index.js';
import { buildApp, type App } from '../../src/web/app.js';
import { freshDatabase } from './database.js';
import { testPlace } from './server-place.js';
import { smallPack } from './small-pack.js';

/** A whole application on a database of its own, with a clock that a test can move. */

export interface TestApp extends App {
  db: Db;
  url: string;
  /** With the server's own backups. */
  backups: string;
  clock: { now(): Date; set(iso: string): void; forward(milliseconds: number): void };
  /** What the database holds, for a test's own look. */
  rows<T extends object>(text: string, values?: unknown[]): Promise<T[]>;
  visitor(address?: string): Visitor;
  /** Somebody who has come in, from an address of their own: comings-in from one address are limited. */
  candidate(name?: string): Promise<Visitor>;
  /** A second server on the same database. */
  another(): Promise<App>;
  close(): Promise<void>;
}

export function movableClock(start: string): TestApp['clock'] {
  let time = Date.parse(start);
  return {
    now: () => new Date(time),
    set: (iso) => void (time = Date.parse(iso)),
    forward: (milliseconds) => void (time += milliseconds),
  };
}

export async function testApp(options: { pack?: Pack; start?: string; origin?: string; logger?: object } = {}): Promise<TestApp> {
  const database = await freshDatabase();
  const db = openDatabase({ url: database.url, log: () => undefined });
  await packsService({ db, enrolAll }).load(options.pack ?? smallPack());
  const installation = await ensureInstallation(db, { cookieSecret: Buffer.alloc(32, 7), phraseSalt: Buffer.alloc(16, 9) });
  const clock = movableClock(options.start ?? '2026-11-25T18:00:00Z');
  const { place, folder } = testPlace(database.url, () => clock.now());
  const build = () =>
    buildApp({
      db,
      clock,
      installation,
      place,
      origin: options.origin ?? null,
      trustProxy: [],
      logger: options.logger ?? (false as never),
    });
  const app = await build();
  const others: App[] = [];
  let candidates = 0;
  return {
    ...app,
    db,
    url: database.url,
    backups: folder,
    clock,
    rows: async (text, values) => (await db.pool.query(text, values)).rows,
    visitor: (address) => new Visitor(app, address),
    candidate: async (name = 'Odo') => {
      candidates += 1;
      const visitor = new Visitor(app, `10.1.${candidates >> 8}.${candidates & 255}`);
      await visitor.start(name);
      return visitor;
    },
    another: async () => {
      const other = await build();
      others.push(other);
      return other;
    },
    close: async () => {
      for (const one of [app, ...others]) await one.server.close();
      await db.close();
      await database.drop();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

export interface Shown {
  status: number;
  location: string | undefined;
  headers: Record<string, string | string[] | number | undefined>;
  html: HTMLElement;
  /** The body as sent. */
  text: string;
  /** What a person reads on the sheet, spaces of all kinds made plain. */
  words: string;
}

/** A browser without a screen: keeps cookies, fills in forms, follows where it is sent. */
export class Visitor {
  readonly cookies = new Map<string, string>();
  constructor(
    public app: App,
    private readonly address = '127.0.0.1',
  ) {}

  async send(method: 'GET' | 'POST', url: string, body?: Record<string, string>, headers: Record<string, string> = {}): Promise<Shown> {
    const response = await this.app.server.inject({
      method,
      url,
      remoteAddress: this.address,
      headers: {
        cookie: [...this.cookies].map(([name, value]) => `${name}=${value}`).join('; '),
        ...(body === undefined ? {} : { 'content-type': 'application/x-www-form-urlencoded' }),
        ...headers,
      },
      ...(body === undefined ? {} : { payload: new URLSearchParams(body).toString() }),
    });
    return this.shown(response);
  }

  /** A file in a form with a field for it, as browsers send it. Without a page there is no token. */
  async sendFile(page: Shown | null, action: string, name: string, bytes: Buffer): Promise<Shown> {
    const form = new FormData();
    const token = page?.html.querySelector(`form[action="${action}"] input[name=_csrf]`)?.getAttribute('value');
    if (token !== undefined) form.append('_csrf', token);
    form.append('file', new Blob([new Uint8Array(bytes)], { type: 'application/zip' }), name);
    const body = new Response(form);
    const response = await this.app.server.inject({
      method: 'POST',
      url: action,
      remoteAddress: this.address,
      headers: {
        cookie: [...this.cookies].map(([key, value]) => `${key}=${value}`).join('; '),
        'content-type': body.headers.get('content-type') ?? '',
      },
      payload: Buffer.from(await body.arrayBuffer()),
    });
    return this.shown(response);
  }

  private shown(response: Awaited<ReturnType<App['server']['inject']>>): Shown {
    for (const cookie of response.cookies) {
      if (cookie.value === '' || cookie.maxAge === 0) this.cookies.delete(cookie.name);
      else this.cookies.set(cookie.name, cookie.value);
    }
    const html = parse(response.body);
    const words = (html.querySelector('main') ?? html).text.replace(/\s+/g, ' ');
    return {
      status: response.statusCode,
      location: response.headers.location,
      headers: response.headers,
      html,
      text: response.body,
      words,
    };
  }

  get(url: string): Promise<Shown> {
    return this.send('GET', url);
  }

  /** Sends a form of a page as it stands, with these fields filled in. */
  submit(page: Shown, action: string, fields: Record<string, string> = {}): Promise<Shown> {
    const form = page.html.querySelectorAll('form').find((found) => found.getAttribute('action') === action);
    if (form === undefined) throw new Error(`The page has no form for ${action}: ${page.text.slice(0, 300)}`);
    const values: Record<string, string> = {};
    for (const input of form.querySelectorAll('input, textarea')) {
      const [name, type] = [input.getAttribute('name'), input.getAttribute('type') ?? 'text'];
      if (name === undefined || ((type === 'radio' || type === 'checkbox') && input.getAttribute('checked') === undefined)) continue;
      values[name] = input.getAttribute('value') ?? '';
    }
    return this.send('POST', action, { ...values, ...fields });
  }

  /** Comes in as a candidate and returns the words of the return phrase. */
  async start(name = 'Odo', fields: Record<string, string> = {}): Promise<string[]> {
    const sent = await this.submit(await this.get('/'), '/start', { name, timeZone: 'Europe/London', ...fields });
    const page = sent.location === undefined ? sent : await this.get(sent.location);
    if (page.status !== 200) throw new Error(`start answered ${page.status}: ${page.html.querySelector('main')?.text ?? ''}`);
    return page.html.querySelectorAll('.slip li').map((word) => word.text.trim());
  }

  /** Starts a round and returns its address. */
  async round(minutes = '10'): Promise<string> {
    const sent = await this.submit(await this.get('/'), '/study/rounds', { minutes });
    if (sent.location === undefined) throw new Error(`no round: ${sent.status} ${sent.text.slice(0, 300)}`);
    return sent.location;
  }
}
