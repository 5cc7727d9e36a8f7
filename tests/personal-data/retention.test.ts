import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { removalService, retentionService } from '../../src/personal-data/index.js';
import { addMember, makeClass } from '../support/classes.js';
import { testApp, type TestApp, type Visitor } from '../support/app.js';
import { staffOf } from '../support/staff.js';

/** The night job that removes whoever has not been here for long, and what is said before it does. 18 months before 26 November 2026 is 26 May 2025. */

let app: TestApp;
let administrator: Visitor;
let tutor: Visitor;
let classId: number;
const ids: Record<string, number> = {};
const night = () => {
  const needs = { db: app.db, clock: app.clock };
  const removal = removalService({ ...needs, removedList: null, log: () => undefined });
  return retentionService({ ...needs, removal }).run();
};
const names = async (): Promise<string[]> =>
  (await app.rows<{ name: string }>(`SELECT display_name AS name FROM person WHERE role = 'candidate' ORDER BY display_name`)).map(
    ({ name }) => name,
  );
const noticed = async (): Promise<string[]> =>
  (
    await app.rows<{ name: string }>('SELECT display_name AS name FROM removal_notice n JOIN person p ON p.id = n.person_id ORDER BY 1')
  ).map(({ name }) => name);

beforeAll(async () => {
  app = await testApp({ start: '2026-11-26T02:00:00Z' });
  ({ administrator, tutor } = await staffOf(app));
  classId = await makeClass(app, 'Thursday beginners', 'Tessa');
  const old = '2025-05-01T19:00:00Z';
  for (const name of ['Away', 'Back', 'Kept', 'Asked', 'Sitting', 'Exam'])
    ids[name] = await addMember(app, name === 'Away' ? null : classId, name, { seenAt: old });
  ids['Near'] = await addMember(app, classId, 'Near', { seenAt: '2025-05-26T00:00:00Z' });
  // Somebody for whom a slip was printed, and who never came.
  ids['Never'] = await addMember(app, classId, 'Never');
  await app.rows(`UPDATE person SET created_at = $2 WHERE id = $1`, [ids['Never'], old]);
  await app.rows(`UPDATE person SET keep_until = '2027-06-01' WHERE id = $1`, [ids['Kept']]);
  await app.rows(`UPDATE person SET last_seen_at = $1 WHERE role <> 'candidate'`, [old]);
  await app.rows(`INSERT INTO study_plan (person_id, exam_day, minutes, saved_at) VALUES ($1, $2, 10, now())`, [
    ids['Exam'],
    Date.parse('2027-01-10') / 86_400_000,
  ]);
  await app.rows(
    `WITH paper AS (INSERT INTO paper (id, pack_id, pack_version, title, blueprint, region, seed, made_at, class_id, versions)
       SELECT gen_random_uuid(), id, '1', 'Old paper', '{}', 'uk', 1, $2::timestamptz, $3, 1 FROM pack LIMIT 1 RETURNING id),
     open AS (INSERT INTO sitting (id, paper_id, version, person_id, way, started_at, deadline_at)
       SELECT gen_random_uuid(), id, 1, $1, 'screen', '2026-11-26T01:55:00Z', '2027-11-26T02:55:00Z' FROM paper)
     INSERT INTO sitting (id, paper_id, version, guest_name, way, handed_in_at, "right", passed)
     SELECT gen_random_uuid(), paper.id, 1, guest.name, 'sheet', guest.at::timestamptz, 1, false FROM paper,
       (VALUES ('Old guest', '2025-05-01'), ('Older guest', '2025-04-01'), ('New guest', '2025-06-30')) AS guest (name, at)`,
    [ids['Sitting'], old, classId],
  );
}, 60_000);
afterAll(() => app.close());

describe('the night job', () => {
  it('first tells who will go, removes nobody, and leaves whom something keeps', async () => {
    const everybody = await names();
    const report = await night();
    expect(report).toMatchObject({ noticed: 4, removed: 0 });
    expect(await noticed()).toEqual(['Asked', 'Away', 'Back', 'Never']);
    expect(await names()).toEqual(everybody);
    expect(await app.rows(`SELECT to_char(remove_on, 'YYYY-MM-DD') AS on FROM removal_notice GROUP BY 1`)).toEqual([{ on: '2026-12-10' }]);
    expect(await night()).toMatchObject({ noticed: 0, removed: 0 });
  });

  it('takes the names off printed sheets that are as old', async () => {
    expect(await app.rows(`SELECT guest_name AS name FROM sitting WHERE guest_name IS NOT NULL ORDER BY guest_name COLLATE "C"`)).toEqual([
      { name: 'New guest' },
      { name: 'name removed 1' },
      { name: 'name removed 2' },
    ]);
  });

  it('is told on the administrator’s page by class, and to tutors of the class alone', async () => {
    const page = await administrator.get('/upkeep/keeping');
    expect(page.words).toContain('4 candidates will be removed, unless they come back.');
    expect(page.html.querySelectorAll('#leaving h3').map(({ text }) => text)).toEqual(['Thursday beginners', 'In no class']);
    const rows = page.html.querySelectorAll('#leaving tbody tr').map((row) =>
      row
        .querySelectorAll('th, td')
        .slice(0, 3)
        .map(({ text }) => text),
    );
    expect(rows).toEqual([
      ['Asked', '1 May 2025, 20:00', '10 Dec 2026'],
      ['Back', '1 May 2025, 20:00', '10 Dec 2026'],
      ['Never', 'never', '10 Dec 2026'],
      ['Away', '1 May 2025, 20:00', '10 Dec 2026'],
    ]);
    expect((await tutor.get('/upkeep/keeping')).status).toBe(403);
    const people = await tutor.get(`/classes/${classId}/people`);
    expect(people.words).toContain('Asked will be removed on 10 Dec 2026');
    expect(people.words).not.toContain('Away');
    const other = await makeClass(app, 'Elsewhere', null);
    const csrf = people.html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    expect((await tutor.send('POST', `/classes/${other}/people/${ids['Asked']}/keep`, { _csrf: csrf })).status).toBe(404);
    // Somebody who is not in one's own class is not kept by its address either.
    expect((await tutor.send('POST', `/classes/${classId}/people/${ids['Away']}/keep`, { _csrf: csrf })).status).toBe(303);
    expect(await noticed()).toContain('Away');
  });

  it('keeps for a year more whom a tutor asks for, and forgets the notice of whoever comes back', async () => {
    const keep = `/classes/${classId}/people/${ids['Asked']}/keep`;
    expect((await tutor.submit(await tutor.get(`/classes/${classId}/people`), keep)).location).toContain('said=kept-longer');
    expect(await noticed()).not.toContain('Asked');
    expect((await administrator.get('/upkeep/keeping')).words).toContain('Asked, until 26 Nov 2027');
    app.clock.set('2026-12-09T02:30:00Z');
    await app.rows('UPDATE person SET last_seen_at = $2 WHERE id = $1', [ids['Back'], '2026-12-08T20:00:00Z']);
    expect(await night()).toMatchObject({ removed: 0 });
    // Near was here on the last day that counted on 26 November, and is told by now.
    expect(await noticed()).toEqual(['Away', 'Near', 'Never']);
  });

  it('removes on the day that was told, with everything, and writes it down by number', async () => {
    app.clock.set('2026-12-10T02:30:00Z');
    expect(await night()).toMatchObject({ removed: 2 });
    expect(await names()).toEqual(['Asked', 'Back', 'Exam', 'Kept', 'Near', 'Sitting']);
    expect(await app.rows('SELECT why, count(*)::int AS n FROM removed_person GROUP BY why')).toEqual([{ why: 'time', n: 2 }]);
    expect(await app.rows(`SELECT about FROM staff_change WHERE role = 'job' ORDER BY id`)).toEqual([
      { about: { person: ids['Away'] } },
      { about: { person: ids['Never'] } },
    ]);
    expect(await app.rows(`SELECT FROM person WHERE role <> 'candidate'`)).toHaveLength(2);
  });

  it('looks again at the last moment: whoever came back in that very minute stays', async () => {
    app.clock.set('2026-12-23T02:30:00Z');
    expect(await noticed()).toEqual(['Near']);
    const needs = { db: app.db, clock: app.clock };
    const removal = removalService({ ...needs, removedList: null, log: () => undefined });
    const late: typeof removal.remove = async (id, why, fits) => {
      await app.rows('UPDATE person SET last_seen_at = $2 WHERE id = $1', [id, app.clock.now()]);
      return await removal.remove(id, why, fits);
    };
    expect(await retentionService({ ...needs, removal: { ...removal, remove: late } }).run()).toMatchObject({ removed: 0 });
    expect(await names()).toContain('Near');
  });

  it('goes by the months that an administrator sets; others are refused', async () => {
    app.clock.set('2026-11-26T03:00:00Z');
    const page = await administrator.get('/upkeep/keeping');
    for (const months of ['5', '37', '0', '-6', 'x', '13'])
      expect((await administrator.submit(page, '/upkeep/keeping', { months })).status, months).toBe(400);
    expect((await administrator.submit(page, '/upkeep/keeping', { months: '6' })).location).toBe('/upkeep/keeping?said=saved');
    expect((await administrator.get('/upkeep/keeping')).html.querySelector('option[selected]')?.getAttribute('value')).toBe('6');
    expect((await app.visitor().get('/privacy')).words).toContain('6 months after your last visit');
    const [line] = await app.rows<object>('SELECT what, about FROM staff_change ORDER BY id DESC LIMIT 1');
    expect(line).toEqual({ what: 'sets how long people are kept', about: { months: 6 } });
  });

  it('tells everybody whom to ask, as an administrator wrote it; the list of changes does not repeat it', async () => {
    expect((await app.visitor().get('/privacy')).words).toContain('ask a tutor of the club, or the person who runs this server');
    const page = await administrator.get('/upkeep/keeping');
    await administrator.submit(page, '/upkeep/keeping', { months: '12', contact: '  <b>Alma</b>\r\n on Thursdays ' });
    const told = await app.visitor().get('/privacy');
    expect(told.text).toContain('ask &lt;b&gt;Alma&lt;/b&gt; on Thursdays');
    expect(told.html.querySelector('main b b, main p b')).toBeNull();
    expect(JSON.stringify(await app.rows('SELECT about FROM staff_change'))).not.toContain('Thursdays');
    const long = { months: '12', contact: 'x'.repeat(161) };
    expect((await administrator.submit(await administrator.get('/upkeep/keeping'), '/upkeep/keeping', long)).status).toBe(400);
  });
});
