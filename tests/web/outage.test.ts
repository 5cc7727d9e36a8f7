import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { startEmbeddedPostgres, type EmbeddedPostgres } from '../../src/platform/embedded-postgres/index.js';
import { answer, rightFields, tokenOf } from '../support/answering.js';
import { testApp, type Shown, type TestApp } from '../support/app.js';
import { ask, eventually, temporaryFolder } from '../support/embedded.js';
import { chooseIn, classOf, held, makeEvening, rightOf } from '../support/evenings.js';
import { beginPaper, choose, makePaper, rightLetter, withBlueprint } from '../support/papers.js';
import { anyFields, HttpVisitor, onceEach, recordedOf, startServer, type ServerProcess } from '../support/server-process.js';

/** A database that is away or full, and two servers on one: what people see, and that nothing is lost or doubled. */

vi.setConfig({ testTimeout: 90_000, hookTimeout: 240_000 });

let place: Awaited<ReturnType<typeof temporaryFolder>>;
let database: EmbeddedPostgres;
/** Knows the database by its address alone, as one set up by DATABASE_URL. */
let server: ServerProcess;

const dataFolder = (): string => `${place.folder}/data`;
const start = (): Promise<EmbeddedPostgres> => startEmbeddedPostgres({ dataFolder: dataFolder(), log: () => undefined });

beforeAll(async () => {
  place = await temporaryFolder();
  database = await start();
  server = await startServer({ DATABASE_URL: database.url, RUNGWISE_DATA: `${place.folder}/files` });
});
afterAll(async () => {
  await server?.end('SIGKILL');
  await database?.stop();
  await place?.remove();
});

async function health(): Promise<{ status: number; body: unknown }> {
  const response = await fetch(`${server.address}/health`);
  return { status: response.status, body: await response.json() };
}

describe('While the database is away', () => {
  function expectTryAgain(shown: Shown): void {
    expect(shown.status).toBe(503);
    expect(Number(shown.headers['retry-after'])).toBeGreaterThan(0);
    expect(shown.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(shown.words).toContain('Please try again in a moment');
    expect(shown.words).toContain('Wait a moment and send it again');
    expect(shown.words).toMatch(/[0-9a-f]{6}-[0-9a-z]+/);
    expect(shown.text).not.toMatch(/ECONN|postgres|127\.0\.0\.1:\d+|\.js:\d+/i);
  }

  it('every page says to try again, and after it is back the same server goes on and the answer sent again is there once', async () => {
    const visitor = new HttpVisitor(server.address);
    await visitor.start();
    const round = await visitor.round();
    const question = await visitor.get(round);
    expect(question.status).toBe(200);

    await database.stop();
    try {
      expect(await health()).toEqual({ status: 503, body: { database: 'away' } });
      for (const address of ['/', round, '/me', '/about', `${round}/end`]) expectTryAgain(await visitor.get(address));
      expectTryAgain(await new HttpVisitor(server.address).get('/'));
      expectTryAgain(await visitor.submit(question, '/study/answer', anyFields(question)));
      const many = await Promise.all(Array.from({ length: 40 }, () => visitor.get('/')));
      expect(many.map(({ status }) => status)).toEqual(many.map(() => 503));
      expect(server.running()).toBe(true);
    } finally {
      const { url } = database;
      database = await start();
      expect(database.url).toBe(url);
    }

    await eventually(async () => expect(await health()).toEqual({ status: 200, body: { database: 'ok' } }));
    expect((await visitor.get('/')).status).toBe(200);
    expect(await recordedOf(database.url, [tokenOf(question)])).toEqual([]);
    const sent = [];
    for (let times = 0; times < 2; times += 1) sent.push(await visitor.submit(question, '/study/answer', anyFields(question)));
    expect(sent.map(({ status, location }) => [status, location])).toEqual(sent.map(() => [303, `/study/answers/${tokenOf(question)}`]));
    expect(await recordedOf(database.url, [tokenOf(question)])).toEqual(onceEach([tokenOf(question)]));
  });

  it('a choice on a paper that was sent again is saved once, and the paper handed in twice is marked once', async () => {
    const visitor = new HttpVisitor(server.address);
    await visitor.start();
    const made = await visitor.submit(await visitor.get('/papers'), '/papers', { paper: 'entry-safety/safety-20', extra: '0' });
    const sitting = made.location ?? '';
    await visitor.submit(await visitor.get(sitting), `${sitting}/begin`, { pages: 'all' });
    const sheet = await visitor.get(`${sitting}/all`);
    const last = await visitor.get(`${sitting}/hand-in`);
    const save = () => visitor.submit(sheet, `${sitting}/save`, { c3: 'A', go: 'all' });
    const handIn = () => visitor.submit(last, `${sitting}/hand-in`);
    await database.stop();
    try {
      for (const shown of [await save(), await handIn()]) expectTryAgain(shown);
    } finally {
      database = await start();
    }
    await eventually(async () => expect((await health()).status).toBe(200));
    expect((await save()).location).toBe(`${sitting}/all`);
    expect((await Promise.all([handIn(), handIn(), handIn()])).map(({ location }) => location)).toEqual(
      Array.from({ length: 3 }, () => `${sitting}/result`),
    );
    const id = sitting.split('/').at(-1);
    expect(
      await ask(
        database.url,
        `SELECT x.choice, count(a.token)::int AS recorded FROM sitting s JOIN sitting_answer x ON x.sitting_id = s.id LEFT JOIN answer a ON a.person_id = s.person_id
         WHERE s.id = $1 GROUP BY x.choice`,
        [id],
      ),
    ).toEqual([{ choice: 'A', recorded: 1 }]);
  });

  it('a start that could not be stored makes nobody, and the same form makes one person afterwards', async () => {
    const people = async () => (await ask<{ n: number }>(database.url, `SELECT count(*)::int AS n FROM person`))[0]?.n ?? -1;
    const [before, visitor] = [await people(), new HttpVisitor(server.address)];
    const welcome = await visitor.get('/');
    await database.stop();
    try {
      expectTryAgain(await visitor.submit(welcome, '/start', { name: 'Ada', timeZone: 'Europe/London' }));
    } finally {
      database = await start();
    }
    await eventually(async () => expect((await health()).status).toBe(200));
    expect(await people()).toBe(before);
    const sent = await visitor.submit(welcome, '/start', { name: 'Ada', timeZone: 'Europe/London' });
    expect([sent.status, visitor.cookies.has('rungwise')]).toEqual([303, true]);
    expect(await people()).toBe(before + 1);
  });
});

describe('Three servers on one database, one by its address and two by its folder', () => {
  let others: ServerProcess[] = [];
  beforeAll(async () => {
    const env = { RUNGWISE_DATA: dataFolder() };
    others = await Promise.all([startServer(env), startServer(env)]);
  });
  afterAll(() => Promise.all(others.map((other) => other.end('SIGKILL'))));

  it('know each other’s sessions and forms, record what is sent to all once, and each goes on without the others', async () => {
    const visitors = [server, ...others].map(({ address }) => new HttpVisitor(address));
    const [first, second, third] = visitors as [HttpVisitor, HttpVisitor, HttpVisitor];
    await first.start();
    const round = await first.round();
    for (const visitor of [second, third]) for (const [name, value] of first.cookies) visitor.cookies.set(name, value);

    const tokens: string[] = [];
    for (let asked = 0; asked < 9; asked += 1) {
      // The page comes from one server; its form goes to all of them at the same moment, twice to each.
      const question = await (visitors[asked % 3] as HttpVisitor).get(round);
      tokens.push(tokenOf(question));
      const sent = await Promise.all([...visitors, ...visitors].map((to) => to.submit(question, '/study/answer', anyFields(question))));
      expect(sent.map(({ status, location }) => [status, location])).toEqual(sent.map(() => [303, `/study/answers/${tokenOf(question)}`]));
      const outcomes = await Promise.all(visitors.map((visitor) => visitor.get(`/study/answers/${tokenOf(question)}`)));
      expect(outcomes.map(({ status }) => status)).toEqual([200, 200, 200]);
    }
    expect(await recordedOf(database.url, tokens)).toEqual(onceEach(tokens));

    expect([await others[0]?.end('SIGTERM'), await others[1]?.end('SIGKILL')]).toEqual([0, null]);
    expect((await first.get('/')).words).toContain('Odo');
    expect(await health()).toEqual({ status: 200, body: { database: 'ok' } });
  });
});

describe('When the disk is full', () => {
  let app: TestApp;
  beforeEach(async () => (app = await testApp()));
  afterEach(async () => {
    vi.restoreAllMocks();
    await app.close();
  });

  const state = () =>
    app.rows(
      `SELECT (SELECT count(*)::int FROM person) AS people, (SELECT count(*)::int FROM session) AS sessions, (SELECT count(*)::int FROM round) AS rounds,
         (SELECT count(*)::int FROM round_item) AS items, (SELECT count(*)::int FROM answer) AS answers, (SELECT sum(reps)::int FROM memory) AS reps`,
    );

  /** The table takes no more rows, with the error that PostgreSQL gives when it cannot extend a file (53100, disk_full). */
  async function fill(table: string): Promise<() => Promise<void>> {
    await app.rows(`CREATE OR REPLACE FUNCTION no_room() RETURNS trigger LANGUAGE plpgsql AS
      $$ BEGIN RAISE EXCEPTION 'could not extend file "base/5/1": No space left on device' USING ERRCODE = 'disk_full'; END $$`);
    await app.rows(`CREATE TRIGGER no_room AFTER INSERT ON ${table} FOR EACH ROW EXECUTE FUNCTION no_room()`);
    return async () => void (await app.rows(`DROP TRIGGER no_room ON ${table}`));
  }

  function expectNoRoom(shown: Shown): void {
    expect(shown.status).toBe(507);
    expect(shown.words).toContain('The server has no room left');
    expect(shown.words).toContain('Nothing was stored');
    expect(shown.text).not.toMatch(/extend file|No space left|53100|ENOSPC|no_room/);
  }

  it('an answer is refused whole, and taken once there is room again', async () => {
    const visitor = app.visitor();
    await visitor.start();
    const question = await visitor.get(await visitor.round());
    const before = await state();
    const room = await fill('answer');
    expectNoRoom(await visitor.submit(question, '/study/answer', { ...rightFields(question), certainty: 'sure' }));
    expect(await state()).toEqual(before);
    await room();
    expect((await answer(visitor, question, rightFields(question))).status).toBe(200);
    expect(await app.rows('SELECT token FROM answer')).toEqual([{ token: tokenOf(question) }]);
    expect(await app.rows('SELECT sum(reps)::int AS reps FROM memory')).toEqual([{ reps: 1 }]);
  });

  it.each(['person', 'memory', 'session', 'guess'])('a start that finds no room in %s makes nobody', async (table) => {
    const visitor = app.visitor();
    const welcome = await visitor.get('/');
    const before = await state();
    await fill(table);
    expectNoRoom(await visitor.submit(welcome, '/start', { name: 'Odo', timeZone: 'Europe/London' }));
    expect(await state()).toEqual(before);
    expect([...visitor.cookies.keys()]).not.toContain('rungwise');
  });

  it.each(['round', 'round_item'])('a round that finds no room in %s is not begun', async (table) => {
    const visitor = app.visitor();
    await visitor.start();
    const now = await visitor.get('/');
    const before = await state();
    await fill(table);
    expectNoRoom(await visitor.submit(now, '/study/rounds', { minutes: '10' }));
    expect(await state()).toEqual(before);
  });

  it('a choice on a paper is refused, and a paper that cannot be recorded is not handed in by half', async () => {
    await withBlueprint(app);
    const visitor = await app.candidate('Wren');
    const sitting = await makePaper(visitor);
    await beginPaper(visitor, sitting);
    const letter = rightLetter(await visitor.get(`${sitting}/1`), 1);
    const sheet = () => app.rows('SELECT position, choice, "right", token FROM sitting_answer ORDER BY position');
    let room = await fill('sitting_answer');
    expectNoRoom(await choose(visitor, sitting, 1, letter));
    expect(await sheet()).toEqual([]);
    await room();
    await choose(visitor, sitting, 1, letter);

    const before = await state();
    room = await fill('answer');
    const page = await visitor.get(`${sitting}/hand-in`);
    expectNoRoom(await visitor.submit(page, `${sitting}/hand-in`));
    expect(await state()).toEqual(before);
    expect(await sheet()).toEqual([{ position: 1, choice: letter, right: null, token: null }]);
    // It runs on: another choice is taken, and then the whole.
    expect((await choose(visitor, sitting, 2, 'A')).status).toBe(303);
    await room();
    expect((await visitor.submit(page, `${sitting}/hand-in`)).location).toBe(`${sitting}/result`);
    expect(await app.rows('SELECT count(*)::int AS n FROM answer')).toEqual([{ n: 2 }]);
    expect(await app.rows('SELECT sum(reps)::int AS reps FROM memory')).toEqual([{ reps: 2 }]);
  });

  it('a choice at a class evening is refused, and a question that cannot be recorded stays open', async () => {
    const own = await classOf(app);
    const odo = await own.member('Odo');
    const evening = await makeEvening(own, { questions: 'AA-01-001 BB-01-001' });
    const at = held(own, evening);
    await at.press('next');
    await at.press('open');
    let room = await fill('evening_answer');
    expectNoRoom(await chooseIn(odo, evening, 'A'));
    await room();
    const letter = rightOf(await odo.get(`/evening/${evening}`));
    expect((await chooseIn(odo, evening, letter)).status).toBe(303);

    room = await fill('answer');
    expectNoRoom(await at.press('close'));
    const choices = () => app.rows('SELECT choice, "right", token IS NOT NULL AS recorded FROM evening_answer');
    expect(await choices()).toEqual([{ choice: letter, right: null, recorded: false }]);
    await room();
    expect((await at.press('close')).status).toBe(303);
    expect(await choices()).toEqual([{ choice: letter, right: true, recorded: true }]);
    expect(await app.rows('SELECT count(*)::int AS n FROM answer')).toEqual([{ n: 1 }]);
  });

  it('the log says it once a minute, with how often it was met since', async () => {
    const lines: string[] = [];
    const logged = await testApp({ logger: { level: 'warn', stream: { write: (line: string) => void lines.push(line) } } });
    try {
      const visitor = await logged.candidate();
      const query = vi
        .spyOn(logged.db.pool, 'query')
        .mockImplementation((() => Promise.reject(Object.assign(new Error('could not extend file'), { code: '53100' }))) as never);
      for (let times = 0; times < 20; times += 1) expectNoRoom(await visitor.get('/me'));
      expect(lines).toHaveLength(1);
      logged.clock.forward(60_000);
      await visitor.get('/me');
      expect(lines.map((line) => (JSON.parse(line) as { unsaid?: number }).unsaid)).toEqual([undefined, 19]);
      // Another trouble is told at once, and what is no trouble of the database each time.
      query.mockImplementation((() => Promise.reject(Object.assign(new Error('gone'), { code: 'ECONNREFUSED' }))) as never);
      await visitor.get('/me');
      query.mockImplementation((() => Promise.reject(new Error('a fault of our own'))) as never);
      for (let times = 0; times < 3; times += 1) await visitor.get('/me');
      expect(lines).toHaveLength(6);
      query.mockRestore();
    } finally {
      await logged.close();
    }
  });

  it('the same is said when the system itself reports it (ENOSPC)', async () => {
    const visitor = app.visitor();
    await visitor.start();
    vi.spyOn(app.db.pool, 'query').mockImplementation((() =>
      Promise.reject(Object.assign(new Error('ENOSPC: no space left on device, write'), { code: 'ENOSPC' }))) as never);
    expectNoRoom(await visitor.get('/'));
    vi.restoreAllMocks();
    expect((await visitor.get('/')).status).toBe(200);
  });
});
