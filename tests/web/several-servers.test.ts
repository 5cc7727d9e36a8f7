import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { startEmbeddedPostgres, type EmbeddedPostgres } from '../../src/platform/embedded-postgres/index.js';
import { tokenOf } from '../support/answering.js';
import type { Shown } from '../support/app.js';
import { ask, eventually, temporaryFolder } from '../support/embedded.js';
import { chooseIn, held, makeEvening } from '../support/evenings.js';
import { joinWith, makeClass, makeJoinCode } from '../support/people.js';
import { cameFrom, startProxy, type Proxy } from '../support/proxy.js';
import { anyFields, freePort, HttpVisitor, onceEach, recordedOf, startServer, type ServerProcess } from '../support/server-process.js';
import { password } from '../support/staff.js';

/** Two servers as processes on one PostgreSQL behind a plain proxy, which sends every request to the other one. */

// Two servers and a database on a machine that others use as well.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 240_000 });

let place: Awaited<ReturnType<typeof temporaryFolder>>;
let database: EmbeddedPostgres;
let servers: [ServerProcess, ServerProcess];
let ports: [number, number];
let proxy: Proxy;

const begin = (port: number): Promise<ServerProcess> =>
  startServer({
    PORT: String(port),
    DATABASE_URL: database.url,
    RUNGWISE_DATA: `${place.folder}/files`,
    RUNGWISE_TRUST_PROXY: '127.0.0.1',
  });

beforeAll(async () => {
  place = await temporaryFolder();
  database = await startEmbeddedPostgres({ dataFolder: `${place.folder}/data`, log: () => undefined });
  ports = [await freePort(), await freePort()];
  servers = [await begin(ports[0]), await begin(ports[1])];
  proxy = await startProxy(servers.map(({ address }) => address));
});
afterAll(async () => {
  await proxy?.close();
  for (const server of servers ?? []) await server.end('SIGKILL');
  await database?.stop();
  await place?.remove();
});

/** Somebody before the proxy. */
const from = (address: string, more: Record<string, string> = {}): HttpVisitor =>
  new HttpVisitor(proxy.address, { [cameFrom]: address, ...more }, 30_000);

/** The same person at one server, without the proxy. */
function at(server: 0 | 1, visitor: HttpVisitor): HttpVisitor {
  const there = new HttpVisitor(servers[server].address, {}, 30_000);
  for (const [name, value] of visitor.cookies) there.cookies.set(name, value);
  return there;
}

async function candidate(address: string, name = 'Odo'): Promise<HttpVisitor> {
  const visitor = from(address);
  await visitor.start(name);
  return visitor;
}

const one = async <T extends object>(text: string, values: unknown[] = []): Promise<T> =>
  (await ask<T>(database.url, text, values))[0] as T;

describe('Two servers behind a proxy', () => {
  it('know one another’s sessions and the tokens of one another’s forms', async () => {
    const visitor = await candidate('10.7.0.1');
    const round = await visitor.round();
    const tokens: string[] = [];
    for (let asked = 0; asked < 8; asked += 1) {
      const before = proxy.passed.length;
      const question = await visitor.get(round);
      tokens.push(tokenOf(question));
      expect((await visitor.submit(question, '/study/answer', anyFields(question))).location).toBe(`/study/answers/${tokenOf(question)}`);
      const [page, form] = proxy.passed.slice(before);
      expect([page?.method, form?.method, (page?.server ?? 0) + (form?.server ?? 0)]).toEqual(['GET', 'POST', 1]);
    }
    expect(await recordedOf(database.url, tokens)).toEqual(onceEach(tokens));
  });

  it('count guesses together: eight wrong passwords for one name, four at each, and a claim to come from elsewhere changes nothing', async () => {
    const guess = async (visitor: HttpVisitor): Promise<Shown> =>
      visitor.submit(await visitor.get('/sign-in'), '/sign-in', { name: 'Nobody Here', password: 'wrong all the same' });
    const before = proxy.passed.length;
    const visitor = from('10.7.1.1');
    for (let tries = 0; tries < 8; tries += 1) {
      expect((await guess(visitor)).status).toBe(422);
      // One request more, so that the next guess goes to the other server.
      await visitor.get('/about');
    }
    const guessed = proxy.passed.slice(before).filter(({ method }) => method === 'POST');
    expect(guessed.map(({ server }) => server).sort()).toEqual([0, 0, 0, 0, 1, 1, 1, 1]);
    for (const forged of [{}, { 'x-forwarded-for': '10.7.1.2' }, { 'x-forwarded-for': '10.7.1.3, 127.0.0.1', 'x-real-ip': '10.7.1.4' }]) {
      for (let server = 0; server < 2; server += 1) {
        const refused = await guess(from('10.7.1.1', forged));
        expect([refused.status, Number(refused.headers['retry-after']) > 0]).toEqual([429, true]);
        await visitor.get('/about');
      }
    }
    // Nobody elsewhere is kept out by it.
    expect((await guess(from('10.7.1.2'))).status).toBe(422);
  });

  it('tell a phone at one of them within three seconds what the tutor does at the other', async () => {
    const tutor = from('10.7.2.1');
    // Each start makes the link anew, so the last one counts.
    const link = new URL(/http:\S+\/set-up\/\S+/.exec(servers[1].said())?.[0] ?? '').pathname;
    await tutor.submit(await tutor.get(link), link, { name: 'Alma', password });
    const classId = await makeClass(tutor, 'Thursday beginners');
    const odo = await candidate('10.7.2.2');
    await joinWith(odo, await makeJoinCode(tutor, classId));
    const evening = await makeEvening({ classId, tutor } as never, { count: '3' });
    const steps = held({ classId, tutor: at(0, tutor) } as never, evening);
    await steps.press('next');
    const phone = at(1, odo);
    const stop = new AbortController();
    const cookie = [...phone.cookies].map(([name, value]) => `${name}=${value}`).join('; ');
    const stream = await fetch(`${phone.base}/evening/${evening}/events`, { headers: { cookie }, signal: stop.signal });
    const told: { at: number; text: string }[] = [];
    void (async () => {
      for await (const chunk of stream.body ?? [])
        for (const [, text] of Buffer.from(chunk as Uint8Array)
          .toString()
          .matchAll(/^data: (.*)$/gm))
          told.push({ at: Date.now(), text: text ?? '' });
    })().catch(() => undefined);
    await eventually(async () => expect(told).toHaveLength(1), 5000);
    const waits: number[] = [];
    for (const step of ['open', 'close', 'show', 'next']) {
      const known = told.length;
      // The page of the tutor is fetched first; the clock runs from the press.
      const control = await steps.control();
      const pressed = Date.now();
      expect((await tutorPresses(steps, control, step)).status).toBe(303);
      await eventually(async () => expect(told.length).toBeGreaterThan(known), 5000);
      waits.push((told.at(-1)?.at ?? Infinity) - pressed);
      if (step === 'open') expect((await chooseIn(phone, evening, 'A')).status).toBe(303);
    }
    stop.abort();
    for (const milliseconds of waits) expect(milliseconds).toBeLessThan(3000);
    // The choice that was sent to one server is on the record once, closed by the other.
    expect(
      await one('SELECT count(*)::int AS answers, count(token)::int AS recorded FROM evening_answer WHERE evening_id = $1', [evening]),
    ).toEqual({
      answers: 1,
      recorded: 1,
    });

    function tutorPresses(control: ReturnType<typeof held>, page: Shown, step: string): Promise<Shown> {
      return at(0, tutor).submit(page, `${control.root}/step`, { do: step });
    }
  });

  it('hold ten connections each and no more, however many people come at once', async () => {
    const visitors = await Promise.all(Array.from({ length: 12 }, (_, index) => candidate(`10.7.3.${index + 1}`)));
    let [over, seen] = [false, 0];
    const watch = (async () => {
      for (; !over; await wait(20)) {
        const { n } = await one<{ n: number }>(`SELECT count(*)::int AS n FROM pg_stat_activity WHERE application_name = 'rungwise'`);
        seen = Math.max(seen, n);
      }
    })();
    const pages = Promise.all(Array.from({ length: 48 }, (_, index) => (visitors[index % 12] as HttpVisitor).get('/me')));
    const statuses = (await pages.finally(() => (over = true))).map(({ status }) => status);
    await watch;
    // On a busy machine some may have waited longer than three seconds for a connection: those are asked to try again.
    expect(statuses.filter((status) => status !== 200 && status !== 503)).toEqual([]);
    expect(statuses).toContain(200);
    expect(seen).toBeGreaterThan(10);
    expect(seen).toBeLessThanOrEqual(20);
  });
});

interface Sat {
  visitor: HttpVisitor;
  sitting: string;
  id: string;
  page: Shown;
  letters: string[][];
}

async function sits(address: string): Promise<Sat> {
  const visitor = await candidate(address, 'Wren');
  const made = await visitor.submit(await visitor.get('/papers'), '/papers', { paper: 'entry-safety/safety-20', extra: '0' });
  const sitting = made.location ?? '';
  await visitor.submit(await visitor.get(sitting), `${sitting}/begin`, { pages: 'all' });
  const page = await visitor.get(`${sitting}/all`);
  const letters = page.html
    .querySelectorAll('fieldset')
    .map((field) => field.querySelectorAll('input[type=radio]').map((input) => input.getAttribute('value') ?? ''));
  expect(letters).toHaveLength(20);
  return { visitor, sitting, id: sitting.split('/').at(-1) ?? '', page, letters };
}

/** Sends one choice, once. @returns the status, or 0 where nothing came back */
const save = ({ visitor, sitting, page }: Sat, place: number, letter: string): Promise<number> =>
  visitor.submit(page, `${sitting}/save`, { [`c${place}`]: letter, go: 'all' }).then(
    ({ status }) => status,
    () => 0,
  );

const markOf = (id: string) =>
  one<{ handedIn: Date | null; right: number; marked: number; sheet: number; recorded: number; doubled: number }>(
    `SELECT s.handed_in_at AS "handedIn", s."right", count(*) FILTER (WHERE x."right")::int AS marked, count(x.choice)::int AS sheet,
       count(a.token)::int AS recorded, (SELECT count(*) FROM answer o WHERE o.person_id = s.person_id)::int - count(a.token)::int AS doubled
     FROM sitting s LEFT JOIN sitting_answer x ON x.sitting_id = s.id LEFT JOIN answer a ON a.person_id = s.person_id AND a.token = x.token
     WHERE s.id = $1 GROUP BY s.id`,
    [id],
  );

describe('A paper', () => {
  it('that was begun with two servers goes on with one when the other is killed, and the candidate is asked once to try again at most', async () => {
    const sat = await sits('10.7.4.1');
    const sheet = new Map<number, string>();
    let tryAgain = 0;
    for (let place = 1; place <= 20; place += 1) {
      const letter = sat.letters[place - 1]?.[place % 4] ?? 'A';
      // Half the way, one of them is killed at the very moment.
      const sent = save(sat, place, letter);
      if (place === 10) await servers[0].end('SIGKILL');
      let status = await sent;
      if (status !== 303) {
        tryAgain += 1;
        status = await save(sat, place, letter);
      }
      expect(status).toBe(303);
      sheet.set(place, letter);
    }
    expect(tryAgain).toBeLessThanOrEqual(1);
    const kept = await ask<{ position: number; choice: string }>(
      database.url,
      'SELECT position, choice FROM sitting_answer WHERE sitting_id = $1 ORDER BY position',
      [sat.id],
    );
    expect(kept.map(({ position, choice }) => [position, choice])).toEqual([...sheet]);
    const last = await sat.visitor.get(`${sat.sitting}/hand-in`);
    expect((await sat.visitor.submit(last, `${sat.sitting}/hand-in`)).location).toBe(`${sat.sitting}/result`);
    const { handedIn, right, ...mark } = await markOf(sat.id);
    expect([handedIn !== null, right]).toEqual([true, mark.marked]);
    expect(mark).toEqual({ marked: right, sheet: 20, recorded: 20, doubled: 0 });

    const before = proxy.passed.length;
    servers[0] = await begin(ports[0]);
    for (let times = 0; times < 4; times += 1) expect((await sat.visitor.get(`${sat.sitting}/result`)).status).toBe(200);
    expect(new Set(proxy.passed.slice(before).map(({ server }) => server))).toEqual(new Set([0, 1]));
  });

  it('whose time has run out is handed in once, though both servers come upon it at the same moment', async () => {
    const all = await Promise.all(Array.from({ length: 6 }, (_, index) => sits(`10.7.5.${index + 1}`)));
    const alone = await sits('10.7.5.100');
    for (const sat of [...all, alone])
      for (const place of [1, 2, 3]) expect(await save(sat, place, sat.letters[place - 1]?.[0] ?? '')).toBe(303);
    await ask(database.url, `UPDATE sitting SET deadline_at = now() - interval '1 second' WHERE id = ANY ($1)`, [
      [...all, alone].map(({ id }) => id),
    ]);
    const results = await Promise.all(
      all.flatMap(({ visitor, sitting }) =>
        [at(0, visitor), at(1, visitor), at(0, visitor)].map((there) => there.get(`${sitting}/result`)),
      ),
    );
    expect(new Set(results.map(({ status }) => status))).toEqual(new Set([200]));
    // Nobody looks at the last one: both servers look for such papers by themselves every twenty seconds.
    await eventually(async () => expect((await markOf(alone.id)).handedIn).not.toBeNull(), 45_000);
    for (const { id } of [...all, alone]) {
      const { right, ...mark } = await markOf(id);
      expect(mark).toEqual({ handedIn: expect.any(Date), marked: right, sheet: 3, recorded: 3, doubled: 0 });
    }
  });
});
