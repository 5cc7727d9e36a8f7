import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ensureInstallation } from '../../src/accounts/index.js';
import { removePersonRows } from '../../src/personal-data/index.js';
import { migrationsFolder, restoreBackup } from '../../src/platform/backup/index.js';
import { openDatabase, type Db } from '../../src/platform/db.js';
import { buildApp, type App } from '../../src/web/app.js';
import { answer, rightFields } from '../support/answering.js';
import { movableClock, testApp, Visitor, type TestApp } from '../support/app.js';
import { emptyDatabase, type TestDatabase } from '../support/database.js';
import { beginPaper, choose, makePaper, withBlueprint } from '../support/papers.js';
import { testPlace } from '../support/server-place.js';

/** A month-old backup put back: who is in, what is open, what is due. */

let old: TestApp;
let target: TestDatabase;
let db: Db;
let restored: App;
let phrase: string[];
let cookies: Map<string, string>;
let sitting: string;
const clock = movableClock('2026-12-25T18:00:00Z');

beforeAll(async () => {
  old = await testApp();
  await withBlueprint(old);
  const odo = old.visitor('10.0.0.5');
  phrase = await odo.start('Odo');
  const round = await odo.round('20');
  for (let asked = 0; asked < 3; asked += 1) {
    const page = await odo.get(round);
    if (page.status !== 200) break;
    await answer(odo, page, rightFields(page));
  }
  sitting = await makePaper(odo);
  await beginPaper(odo, sitting);
  await choose(odo, sitting, 1, 'A');
  const gone = await old.candidate('Wilf Marker');
  const { place, folder } = testPlace(old.url, () => old.clock.now());
  const { file } = await place.backups.take();
  // After the backup somebody has themselves removed.
  const page = await gone.get('/me/remove');
  const box = page.html.querySelector('input[type=checkbox]');
  await gone.submit(page, '/me/remove', { [box?.getAttribute('name') ?? '']: box?.getAttribute('value') ?? 'on' });
  const removed = await old.rows<{ mark: string }>('SELECT mark FROM removed_person');
  if (removed.length !== 1) throw new Error('nobody was removed');
  cookies = odo.cookies;

  target = await emptyDatabase();
  await restoreBackup({
    url: target.url,
    file,
    migrationsFolder,
    program: { version: '0.1.0' },
    now: clock.now(),
    before: { folder },
    removed: removed.map(({ mark }) => ({ mark, day: '2026-11-25' })),
    afterLoad: async (sql, people) => {
      const { rows } = await sql.query<{ id: number }>('SELECT id FROM person WHERE mark = ANY ($1::uuid[])', [
        people.map(({ mark }) => mark),
      ]);
      for (const { id } of rows) await removePersonRows(sql, id);
    },
  });
  db = openDatabase({ url: target.url, log: () => undefined });
  const installation = await ensureInstallation(db, { cookieSecret: Buffer.alloc(32, 1), phraseSalt: Buffer.alloc(16, 1) });
  const there = testPlace(target.url, () => clock.now());
  restored = await buildApp({ db, clock, installation, place: there.place, origin: null, trustProxy: [], logger: false });
}, 120_000);
afterAll(async () => {
  await restored.server.close();
  await db.close();
  await target.drop();
  await old.close();
});

describe('after a backup of a month ago was put back', () => {
  it('nobody is signed in, and the return phrase still opens the door', async () => {
    const visitor = new Visitor(restored, '10.0.0.6');
    for (const [name, value] of cookies) visitor.cookies.set(name, value);
    expect((await visitor.get('/plan')).status).toBe(401);
    const fresh = new Visitor(restored, '10.0.0.7');
    const sent = await fresh.submit(await fresh.get('/return'), '/return', { phrase: phrase.join(' ') });
    expect(sent.status).toBe(303);
    expect((await fresh.get('/')).text).toContain('Odo');
  });

  it('whoever was removed meanwhile is not there', async () => {
    const { rows } = await db.pool.query("SELECT id FROM person WHERE display_name LIKE '%Marker%'");
    expect(rows).toEqual([]);
  });

  it('the paper that was open then is handed in with what was saved', async () => {
    expect(await restored.work.closeOverdue()).toBe(1);
    const { rows } = await db.pool.query<{ handed: boolean; saved: number }>(
      `SELECT s.handed_in_at IS NOT NULL AS handed, (SELECT count(*)::int FROM sitting_answer a WHERE a.sitting_id = s.id AND a.choice IS NOT NULL) AS saved
       FROM sitting s WHERE s.id = $1`,
      [sitting.split('/').at(-1)],
    );
    expect(rows).toEqual([{ handed: true, saved: 1 }]);
  });

  it('what fell due meanwhile is asked in rounds of the length one chooses, and not all at once', async () => {
    const visitor = new Visitor(restored, '10.0.0.8');
    await visitor.submit(await visitor.get('/return'), '/return', { phrase: phrase.join(' ') });
    await visitor.round('5');
    const { rows } = await db.pool.query<{ asked: number }>(
      'SELECT count(*)::int AS asked FROM round_item i JOIN round r ON r.id = i.round_id WHERE r.day = $1',
      [Math.floor(clock.now().getTime() / 86_400_000)],
    );
    // Five minutes at half a minute a question are about ten: nowhere near all that is there.
    expect(rows[0]?.asked).toBeGreaterThan(0);
    expect(rows[0]?.asked).toBeLessThanOrEqual(15);
  });
});
