import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inTransaction } from '../../src/platform/db.js';
import { removalService, removePersonRows, type RemovedList } from '../../src/personal-data/index.js';
import type { TestApp } from '../support/app.js';
import { marker, wholeLife, type Life } from '../support/life.js';
import { password } from '../support/staff.js';

/** A person is removed: nothing of them is left, and what others rely on stays. */

/** Every row of every table as text, the way a full dump would hold it. */
async function dump(app: TestApp): Promise<string> {
  const tables = await app.rows<{ name: string }>(`SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' ORDER BY tablename`);
  const texts = [];
  for (const { name } of tables) {
    const [row] = await app.rows<{ text: string | null }>(`SELECT string_agg(t::text, E'\\n') AS text FROM "${name}" t`);
    texts.push(`${name}: ${row?.text ?? ''}`);
  }
  return texts.join('\n');
}

/** Rows by table that a number of a person still points to. */
async function rowsOf(app: TestApp, id: number): Promise<Record<string, number>> {
  const keys = await app.rows<{ table: string; column: string }>(
    `SELECT c.conrelid::regclass::text AS table, a.attname AS column FROM pg_constraint c
     JOIN pg_attribute a ON a.attrelid = c.conrelid AND a.attnum = ANY (c.conkey) WHERE c.contype = 'f' AND c.confrelid = 'person'::regclass`,
  );
  const found: Record<string, number> = {};
  for (const { table, column } of keys) {
    const [row] = await app.rows<{ n: number }>(`SELECT count(*)::int AS n FROM ${table} WHERE ${column} = $1`, [id]);
    if ((row?.n ?? 0) > 0) found[`${table}.${column}`] = row?.n ?? 0;
  }
  return found;
}

const words = [marker.name, marker.name.toUpperCase(), marker.query, marker.answer, marker.remarks];

describe('a candidate who removes themselves', () => {
  let life: Life;
  beforeAll(async () => {
    life = await wholeLife();
  }, 120_000);
  afterAll(() => life.app.close());

  it('is told what goes and what stays, is offered the file, and must tick the box', async () => {
    const { person, app } = life;
    const page = await person.get('/me/remove');
    expect(page.words).toContain('cannot be undone');
    expect(page.html.querySelector('a[href="/me/data.json"]')).not.toBeNull();
    expect(page.words).toContain('Backups hold it for up to three months more.');
    const refused = await person.submit(page, '/me/remove');
    expect(refused.status).toBe(422);
    expect(refused.words).toContain('Nothing was removed. Tick the box first');
    expect(await app.rows('SELECT FROM person WHERE id = $1', [life.id])).toHaveLength(1);
  });

  it('is gone from every table with every word, in one go, and is signed out', async () => {
    const { person, app, id, phrase } = life;
    const before = await dump(app);
    expect(words.filter((word) => !before.includes(word))).toEqual([]);
    expect(Object.keys(await rowsOf(app, id)).length).toBeGreaterThan(10);
    const [marked] = await app.rows<{ mark: string }>('SELECT mark FROM person WHERE id = $1', [id]);
    const second = life.world.odo;
    const sent = await person.submit(await person.get('/me/remove'), '/me/remove', { sure: 'on' });
    expect([sent.status, sent.location]).toEqual([303, '/removed']);
    expect(sent.headers['clear-site-data']).toBe('"cache", "storage"');
    expect((await person.get('/removed')).words).toContain('Everything of yours is removed');
    const after = await dump(app);
    expect(words.filter((word) => after.includes(word))).toEqual([]);
    expect(await rowsOf(app, id)).toEqual({});
    expect(await app.rows('SELECT mark, why FROM removed_person')).toEqual([{ mark: marked?.mark, why: 'self' }]);
    expect((await person.get('/me')).status).toBe(401);
    const back = app.visitor('10.9.9.8');
    expect((await back.submit(await back.get('/return'), '/return', { phrase: phrase.join(' ') })).status).toBe(422);
    expect((await second.get('/me/data')).status).toBe(200);
  });

  it('leaves the printed sheet of the same name without it, and every other name as it was', async () => {
    const names = await life.app.rows<{ name: string; letters: number }>(
      `SELECT guest_name AS name, (SELECT count(*)::int FROM sitting_answer a WHERE a.sitting_id = s.id) AS letters FROM sitting s WHERE guest_name IS NOT NULL ORDER BY guest_name COLLATE "C"`,
    );
    expect(names).toEqual([
      { name: marker.other, letters: 6 },
      { name: 'name removed 1', letters: 6 },
    ]);
    expect((await life.world.tessa.get(life.classPaper)).words).toContain('name removed 1');
  });

  it('leaves pages of the class, its papers, evenings and figures that work', async () => {
    const { tessa, ids } = life.world;
    for (const page of [
      '',
      '/plan',
      '/questions',
      '/evenings',
      `/evenings/${life.evening}`,
      '/skills',
      '/people',
      '/report',
      '/results.csv',
    ])
      expect((await tessa.get(`/classes/${ids.class}${page}`)).status, page).toBe(200);
    for (const page of [life.classPaper, `${life.classPaper}/review/1`, `${life.classPaper}/results.csv`, '/queries', '/club'])
      expect((await tessa.get(page)).status, page).toBe(200);
  });

  it('takes the name off one sheet when its tutor asks, which another’s tutor cannot', async () => {
    const { tessa, ludo } = life.world;
    const [sheet] = await life.app.rows<{ id: string }>('SELECT id FROM sitting WHERE guest_name = $1', [marker.other]);
    const correct = await tessa.get(`${life.classPaper}/enter?correct=${sheet?.id}`);
    const action = `${life.classPaper}/enter/${sheet?.id}/name`;
    const csrf = (await ludo.get('/me')).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    expect((await ludo.send('POST', action, { _csrf: csrf })).status).toBe(404);
    expect((await tessa.submit(correct, action)).status).toBe(303);
    expect((await tessa.submit(correct, action)).status).toBe(303);
    expect(await life.app.rows('SELECT guest_name AS name FROM sitting WHERE guest_name IS NOT NULL ORDER BY 1')).toEqual([
      { name: 'name removed 1' },
      { name: 'name removed 2' },
    ]);
  });
});

describe('an administrator', () => {
  let life: Life;
  beforeAll(async () => {
    life = await wholeLife();
  }, 120_000);
  afterAll(() => life.app.close());

  it('finds a candidate by part of the name, from the class too, and removes them after a second step', async () => {
    const { app, id, world } = life;
    const { administrator, ids } = world;
    const member = await administrator.get(`/classes/${ids.class}/people/${id}`);
    expect(member.html.querySelector(`a[href="/people/${id}/remove"]`)).not.toBeNull();
    expect((await world.tessa.get(`/classes/${ids.class}/people/${id}`)).html.querySelector('a[href^="/people/"]')).toBeNull();
    const found = await administrator.get('/people?text=zqna');
    expect(found.words).toContain('1 person.');
    const page = await administrator.get(found.html.querySelector('main .people a')?.getAttribute('href') ?? '');
    expect(page.words).toContain(`Remove ${marker.name}`);
    expect((await administrator.submit(page, `/people/${id}/remove`)).status).toBe(422);
    const sent = await administrator.submit(page, `/people/${id}/remove`, { sure: 'on' });
    expect(sent.location).toBe('/people?said=removed');
    expect(await rowsOf(app, id)).toEqual({});
    const after = await dump(app);
    expect(words.filter((word) => after.includes(word))).toEqual([]);
    expect(await app.rows('SELECT why FROM removed_person')).toEqual([{ why: 'staff' }]);
    expect((await administrator.submit(page, `/people/${id}/remove`, { sure: 'on' })).status).toBe(404);
    const [line] = await app.rows<{ what: string; about: object }>('SELECT what, about FROM staff_change ORDER BY id DESC LIMIT 1');
    expect(line).toEqual({ what: 'removes somebody for good', about: { person: id } });
  });

  it('removes a tutor whose classes, papers and signatures stay, without the name', async () => {
    const { app, world } = life;
    const { administrator, ids } = world;
    const [tessa] = await app.rows<{ id: number }>(`SELECT id FROM person WHERE display_name = 'Tessa'`);
    const odos = `/classes/${ids.class}/skills/${ids.odo}`;
    const { sign, ticks } = await import('../support/skilled.js');
    await sign(world.tessa, odos, 'small/lead', { ...ticks(3), seenOn: '2026-11-19' });
    const [signed] = await app.rows<{ id: string }>('SELECT id FROM sign_off');
    await app.rows(`UPDATE sign_off SET withdrawn_at = now(), withdrawn_by = 'Tessa', reason = 'mistaken' WHERE id = $1`, [signed?.id]);
    const page = await administrator.get(`/people/${tessa?.id}/remove`);
    expect(page.words).toContain('Classes stay: Thursday beginners.');
    expect((await administrator.submit(page, `/people/${tessa?.id}/remove`, { sure: 'on' })).status).toBe(303);
    expect(await dump(app)).not.toMatch(/tessa/i);
    expect(await rowsOf(app, tessa?.id ?? 0)).toEqual({});
    expect((await administrator.get(`/classes/${ids.class}`)).status).toBe(200);
    expect((await administrator.get(life.classPaper)).status).toBe(200);
    expect((await administrator.get(odos)).words).toContain('a tutor who is no longer here');
    expect((await world.tessa.get('/')).words).toContain('What shall we call you?');
  });

  it('cannot remove itself, and of two who remove one another at once one is left', async () => {
    const { app, world } = life;
    const { administrator } = world;
    const [alma] = await app.rows<{ id: number }>(`SELECT id FROM person WHERE display_name = 'Alma'`);
    expect((await administrator.get(`/people/${alma?.id}/remove`)).status).toBe(404);
    const invited = await administrator.submit(await administrator.get('/staff'), '/staff', { name: 'Ulla', role: 'administrator' });
    const link = /\/invitation\/[A-Za-z0-9_-]{32}/.exec(invited.text)?.[0] ?? '';
    const other = app.visitor('10.0.0.77');
    await other.submit(await other.get(link), link, { password });
    const [ulla] = await app.rows<{ id: number }>(`SELECT id FROM person WHERE display_name = 'Ulla'`);
    const pages = [await administrator.get(`/people/${ulla?.id}/remove`), await other.get(`/people/${alma?.id}/remove`)] as const;
    const sent = await Promise.all([
      administrator.submit(pages[0], `/people/${ulla?.id}/remove`, { sure: 'on' }),
      other.submit(pages[1], `/people/${alma?.id}/remove`, { sure: 'on' }),
    ]);
    expect(sent.filter(({ status }) => status === 303)).toHaveLength(1);
    expect(await app.rows(`SELECT FROM person WHERE role = 'administrator'`)).toHaveLength(1);
  });
});

describe('the list of removed people', () => {
  let life: Life;
  beforeAll(async () => {
    life = await wholeLife();
  }, 120_000);
  afterAll(() => life.app.close());

  it('gets the mark after the removal, and the next time when the file could not be written; never twice', async () => {
    const { app, id, world } = life;
    const lines: string[] = [];
    let full = true;
    const faults: unknown[] = [];
    const removedList: RemovedList = {
      marks: async () => new Set(lines.map((line) => line.split(' ')[0] ?? '')),
      add: async (mark, day) => {
        if (full) throw new Error('no room');
        lines.push(`${mark} ${day}`);
      },
    };
    const removal = removalService({ db: app.db, clock: app.clock, removedList, log: (error) => faults.push(error) });
    const marks = await app.rows<{ id: number; mark: string }>('SELECT id, mark FROM person WHERE id = ANY ($1)', [[id, world.ids.odo]]);
    const markOf = (person: number): string => marks.find((row) => row.id === person)?.mark ?? '';
    expect(await removal.remove(id, 'time')).toBe(true);
    expect([lines, faults.length]).toEqual([[], 1]);
    full = false;
    expect(await removal.remove(world.ids.odo, 'staff')).toBe(true);
    expect(lines.sort()).toEqual([`${markOf(id)} 2026-11-26`, `${markOf(world.ids.odo)} 2026-11-26`].sort());
    expect(await removal.listRemoved()).toBe(0);
    expect(await removal.remove(id, 'staff')).toBe(false);
    expect(lines).toHaveLength(2);
  });

  it('the same code removes somebody inside a transaction of a restore, with a connection of its own', async () => {
    const { app, world } = life;
    const client = new pg.Client({ connectionString: app.url });
    await client.connect();
    await client.query('BEGIN');
    expect(await removePersonRows(client, world.ids.wilf)).toMatchObject({ name: 'Wilf', role: 'candidate' });
    expect(await removePersonRows(client, world.ids.wilf)).toBeNull();
    await client.query('ROLLBACK');
    await client.end();
    expect(await app.rows('SELECT FROM person WHERE id = $1', [world.ids.wilf])).toHaveLength(1);
    await expect(
      inTransaction(app.db, async (sql) => {
        await removePersonRows(sql, world.ids.wilf);
        throw new Error('cut off');
      }),
    ).rejects.toThrow('cut off');
    expect(Object.keys(await rowsOf(app, world.ids.wilf)).length).toBeGreaterThan(1);
  });
});
