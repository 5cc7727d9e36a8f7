import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { addMember } from '../support/classes.js';
import { staffOf } from '../support/staff.js';

/** The administrator's pages, and the list of what staff changed. */

let app: TestApp;
let administrator: Visitor;
let tutor: Visitor;

beforeAll(async () => {
  app = await testApp();
  ({ administrator, tutor } = await staffOf(app));
});
afterAll(() => app.close());

interface Line {
  role: string;
  what: string;
  about: Record<string, unknown>;
}
const lines = () => app.rows<Line>('SELECT role, what, about FROM staff_change ORDER BY id');

describe('the page Upkeep', () => {
  it('tells version, database, disk, people and jobs, and is for administrators only', async () => {
    const page = await administrator.get('/upkeep');
    expect(page.status).toBe(200);
    expect(page.words).toMatch(/PostgreSQL 18\.\d+/);
    expect(page.words).toMatch(/0010 trust, \d/);
    expect(page.words).toMatch(/Tutors ?1 /);
    expect(page.words).toMatch(/Administrators ?1 /);
    expect(page.words).toMatch(/free of/);
    expect((await tutor.get('/upkeep')).status).toBe(403);
    expect((await tutor.get('/upkeep/changes')).status).toBe(403);
  });

  it('warns of a missing backup after two days, on the first page too, until one is taken', async () => {
    await app.db.pool.query("UPDATE installation SET created_at = $1::timestamptz - interval '3 days'", [app.clock.now()]);
    expect((await administrator.get('/upkeep')).words).toContain('There is no backup yet.');
    expect((await administrator.get('/')).words).toContain('There is no backup yet.');
    expect((await tutor.get('/')).words).not.toContain('backup');
    const sent = await administrator.submit(await administrator.get('/upkeep'), '/upkeep/backups');
    expect([sent.status, sent.location]).toEqual([303, '/upkeep?taken=yes']);
    const page = await administrator.get('/upkeep?taken=yes');
    expect(page.words).toContain('A backup was taken and read back whole');
    expect(page.words).not.toContain('There is no backup yet.');
    expect(page.words).toContain('rungwise-2026-11-25-1800.backup');
  });

  it('hands a backup out as the very file, and writes down who took it', async () => {
    const href = (await administrator.get('/upkeep')).html.querySelector('a[href^="/upkeep/backups/"]')?.getAttribute('href') ?? '';
    const response = await app.server.inject({
      url: href,
      headers: { cookie: [...administrator.cookies].map(([name, value]) => `${name}=${value}`).join('; ') },
    });
    expect(response.statusCode).toBe(200);
    expect(response.rawPayload.equals(await readFile(`${app.backups}/rungwise-2026-11-25-1800.backup`))).toBe(true);
    expect(response.headers['content-disposition']).toContain('attachment');
    expect((await lines()).at(-1)).toMatchObject({ what: 'downloads a backup', about: { file: 'rungwise-2026-11-25-1800.backup' } });
  });

  it.each(['..%2f..%2fpackage.json', 'removed-people.txt', 'nothing.backup', '%00.backup', '.backup'])(
    'gives no other file: %s',
    async (name) => {
      const { status, text } = await administrator.get(`/upkeep/backups/${name}`);
      expect([400, 404]).toContain(status);
      expect(text).not.toContain('"dependencies"');
    },
  );

  it('asks for the password again before it hands one out', async () => {
    app.clock.forward(10 * 60_000);
    const sent = await administrator.get('/upkeep/backups/rungwise-2026-11-25-1800.backup');
    expect(sent.status).toBe(303);
    expect(sent.location).toMatch(/^\/confirm\?/);
  });

  it('warns again when the last good one is older than two days', async () => {
    await app.db.pool.query("UPDATE job_run SET finished_at = finished_at - interval '50 hours' WHERE job = 'backup'");
    expect((await administrator.get('/upkeep')).words).toContain('The last good backup is 2 days old.');
  });
});

describe('the list of what staff changed', () => {
  it('gets a line for a change, with numbers and without names, and none for what was refused', async () => {
    const before = (await lines()).length;
    await tutor.submit(await tutor.get('/classes/new'), '/classes', {
      exam: '',
      paper: '',
      meetsOn: '',
      meetsAt: '',
      name: 'Thursday marker class',
    });
    const classId = (await app.rows<{ id: number }>("SELECT id FROM study_class WHERE name = 'Thursday marker class'"))[0]?.id ?? 0;
    const member = await addMember(app, classId, 'Odo Marker');
    const root = `/classes/${classId}/people`;
    const page = await tutor.get(root);
    expect((await tutor.submit(page, `${root}/class`, { name: '' })).status).toBeGreaterThanOrEqual(400);
    expect((await lines()).length).toBe(before + 1);
    const person = await tutor.get(`${root}/${member}`);
    await tutor.submit(person, `${root}/${member}/remove`);
    const found = (await lines()).slice(before);
    expect(found.map(({ role, what }) => [role, what])).toEqual([
      ['tutor', 'makes a class'],
      ['tutor', 'takes somebody out of a class'],
    ]);
    expect(found[1]?.about).toEqual({ class: classId, person: member });
    expect(JSON.stringify(await lines())).not.toMatch(/Marker|Thursday/);
  });

  it('gets a line when the table of a class is taken away', async () => {
    const [row] = await app.rows<{ id: number }>('SELECT id FROM study_class ORDER BY id LIMIT 1');
    expect((await administrator.get(`/classes/${row?.id}/results.csv`)).status).toBe(200);
    expect((await lines()).at(-1)).toEqual({ role: 'administrator', what: 'takes away the table of a class', about: { class: row?.id } });
  });

  it('says nothing of what a candidate does', async () => {
    const before = (await lines()).length;
    const odo = await app.candidate();
    await odo.round();
    expect((await lines()).length).toBe(before);
  });

  it.each(["UPDATE staff_change SET what = 'nothing'", 'DELETE FROM staff_change', 'TRUNCATE staff_change'])(
    'refuses: %s',
    async (statement) => {
      await expect(app.db.pool.query(statement)).rejects.toThrow('only added to');
    },
  );

  it('is shown to administrators, the latest first, a page at a time', async () => {
    await app.db.pool.query(
      `INSERT INTO staff_change (at, person_id, role, what, about) SELECT now(), 999, 'tutor', 'line ' || n, '{}' FROM generate_series(1, 150) n`,
    );
    const page = await administrator.get('/upkeep/changes');
    expect(page.html.querySelectorAll('tbody tr')).toHaveLength(100);
    expect(page.words).toContain('line 150');
    expect(page.words).toContain('A tutor who has gone');
    const older = page.html.querySelector('.actions a')?.getAttribute('href') ?? '';
    const rest = await administrator.get(older.replaceAll('&amp;', '&'));
    expect(rest.words).toContain('line 50');
    expect(rest.words).not.toContain('line 51 ');
  });

  it.each(['abc', '-1', '99999999999999', "1'"])('a number that is none, %s, shows the newest', async (before) => {
    expect((await administrator.get(`/upkeep/changes?before=${encodeURIComponent(before)}`)).status).toBe(200);
  });
});
