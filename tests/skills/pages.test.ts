import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shown } from '../support/app.js';
import { fieldsOf, sign, skilledApp, ticks, type Skilled } from '../support/skilled.js';

/** The class by its skills, what is printed, and which skills belong to whom. */

let world: Skilled;
let grid: string;
beforeAll(async () => {
  world = await skilledApp();
  grid = `/classes/${world.ids.class}/skills`;
  // Tansy lives in North America, and has been in the class as long as Odo.
  await world.app.candidate('Tansy');
  await world.app.rows("UPDATE person SET region = 'na' WHERE display_name = 'Tansy'");
  await world.app.rows("INSERT INTO class_member (class_id, person_id) SELECT $1, id FROM person WHERE display_name = 'Tansy'", [
    world.ids.class,
  ]);
  await sign(world.tessa, `${grid}/${world.ids.odo}`, 'small/lead', { ...ticks(3), seenOn: '2026-11-19' });
  await sign(world.tessa, `${grid}/${world.ids.odo}`, 'small/plug', { ...ticks(4), seenOn: '2025-12-30', remarks: 'With care.' });
});
afterAll(() => world.app.close());

const cells = (page: Shown): string[][] =>
  page.html
    .querySelectorAll('tbody tr')
    .map((row) => row.querySelectorAll('th, td').map((cell) => (cell.querySelector('.vh') ?? cell).text.trim()));

describe('the class by its skills', () => {
  it('says in words when each was seen, what is not yet, and what is not asked where somebody lives', async () => {
    const page = await world.tessa.get(grid);
    expect(page.html.querySelectorAll('thead th').map(({ text }) => text)).toEqual([
      'Candidate',
      'Look over a lead',
      'Wire a plug (United Kingdom, 230 V)',
      'Find the panel (North America, 120 V)',
      'Signed',
    ]);
    expect(cells(page)).toEqual([
      ['Odo', 'seen on 19 Nov 2026', 'seen on 30 Dec 2025', 'not asked there', '2 of 2'],
      ['Tansy', 'not yet', 'not asked there', 'not yet', '0 of 2'],
    ]);
    expect(page.html.querySelectorAll('tfoot td').map(({ text }) => text)).toEqual(['1 of 2', '1 of 1', '0 of 1', '']);
  });

  it('has a sheet for each with what is asked where they live, and signs nothing else', async () => {
    const { app, tessa } = world;
    const [tansy] = await app.rows<{ id: number }>("SELECT id FROM person WHERE display_name = 'Tansy'");
    const page = await tessa.get(`${grid}/${tansy?.id}`);
    expect(page.html.querySelectorAll('.skills summary').map(({ text }) => text)).toEqual([
      'Look over a lead: not yet',
      'Find the panel: not yet',
    ]);
    const filled = fieldsOf(page, 'small/panel');
    const sent = await tessa.send('POST', `${grid}/${tansy?.id}`, { ...filled, ...ticks(4), skill: 'small/plug' });
    expect(sent.status).toBe(422);
    expect(sent.html.querySelector('.plate.no a')?.getAttribute('href')).toBe('#skills');
    expect(await app.rows('SELECT id FROM sign_off WHERE person_id = $1', [tansy?.id])).toEqual([]);
  });

  it('shows the year only of a day of another year', async () => {
    const shown = (await world.tessa.get(grid)).html.querySelectorAll('tbody tr:first-child td [aria-hidden]').map(({ text }) => text);
    expect(shown).toEqual(['19 Nov', '30 Dec2025']);
  });

  it('leads from a cell to the skill on the candidate’s sheet', async () => {
    const href = (await world.tessa.get(grid)).html.querySelector('tbody td a')?.getAttribute('href') ?? '';
    const [address, anchor] = href.split('#');
    expect((await world.tessa.get(address ?? '')).html.querySelector(`#${anchor}`)?.text).toContain('Look over a lead');
  });

  it('asks only what its pack has, when it works towards a paper', async () => {
    const { app, tessa, ids } = world;
    await app.rows("UPDATE study_class SET paper = 'other/ten' WHERE id = $1", [ids.class]);
    expect((await tessa.get(grid)).words).toContain('The pack of this class has no practical skills.');
    const page = await tessa.get(`${grid}/${ids.odo}`);
    expect([page.status, page.words.includes('by Tessa')]).toEqual([200, false]);
    await app.rows("UPDATE study_class SET paper = 'small/ten' WHERE id = $1", [ids.class]);
    expect(cells(await tessa.get(grid))).toHaveLength(2);
    await app.rows('UPDATE study_class SET paper = NULL WHERE id = $1', [ids.class]);
  });

  it('says what to do while nobody is in the class', async () => {
    const { app, tessa } = world;
    const [row] = await app.rows<{ id: number }>("INSERT INTO study_class (name) VALUES ('New') RETURNING id");
    await app.rows("INSERT INTO class_tutor (class_id, person_id) SELECT $1, id FROM person WHERE display_name = 'Tessa'", [row?.id]);
    const page = await tessa.get(`/classes/${row?.id}/skills`);
    expect(page.html.querySelector(`p a[href="/classes/${row?.id}/people"]`)?.text).toBe('Let candidates join');
    // Where Tessa lives is what the form to take along goes by.
    expect((await tessa.get(`/classes/${row?.id}/skills/sheet`)).html.querySelectorAll('h2').map(({ text }) => text)).toEqual([
      'Look over a lead',
      'Wire a plug',
    ]);
  });
});

describe('what is printed of skills', () => {
  it('is for one candidate: name, skills, criteria, day, tutor, remarks, and that it is no certificate', async () => {
    const page = await world.tessa.get(`${grid}/${world.ids.odo}/record`);
    expect(page.html.querySelector('h1')?.text).toBe('Odo: practical skills seen');
    expect(page.html.querySelectorAll('h2').map(({ text }) => text)).toEqual(['Look over a lead', 'Wire a plug']);
    for (const words of [
      '2 of 2 skills seen and signed.',
      'This is the club’s own note of what its tutors saw. It is no certificate and no official record.',
      'Seen on 19 Nov 2026, signed on 26 Nov 2026 by Tessa.',
      'Unplugs it. Looks along it. Labels it.',
      'Remarks: With care.',
    ])
      expect(page.words).toContain(words);
    expect(page.html.querySelectorAll('.titleblock .name').map(({ text }) => text.trim())).toEqual(['Odo']);
  });

  it('is an empty form to take along, with a box for every criterion, what ends it, and its caution', async () => {
    const page = await world.tessa.get(`${grid}/sheet`);
    const [first] = page.html.querySelectorAll('section.kept');
    expect(first?.querySelectorAll('.empty-boxes li').map(({ text }) => text.trim())).toEqual([
      'Unplugs it.',
      'Looks along it.',
      'Labels it.',
    ]);
    expect(first?.querySelectorAll('.fill dt').map(({ text }) => text)).toEqual(['Candidate', 'Seen on', 'Tutor', 'Remarks']);
    expect(first?.text).toContain('Stop at once if it is plugged in.');
    expect(first?.querySelector('.caution')?.text).toContain('Leave fixed wiring to an electrician.');
    expect(page.words).toContain('no certificate and no official record');
    expect(page.words).toContain('Only: North America, 120 V');
  });

  it('is a candidate’s own page, folded up or with all of it open', async () => {
    const { odo } = world;
    const [folded, open] = [await odo.get('/skills'), await odo.get('/skills?all=yes')];
    expect(folded.words).toContain('2 of 2 seen and signed by a tutor.');
    expect([folded, open].map((page) => page.html.querySelectorAll('details[open]').length)).toEqual([0, 2]);
    expect(folded.html.querySelector('a[href="/skills?all=yes"]')?.text).toBe('Open all of them, to read or print');
  });
});

describe('what a candidate has still to show', () => {
  it('is there before anything is signed: criteria with reasons, what ends it, the caution; only for where one lives', async () => {
    const page = await world.wilf.get('/skills');
    expect(page.html.querySelectorAll('summary').map(({ text }) => text.trim())).toEqual([
      'Look over a lead: still to show',
      'Wire a plug: still to show',
    ]);
    const [first] = page.html.querySelectorAll('.skills > section');
    for (const words of ['Unplugs it.', 'Why: Unplugs it.', 'Stop at once if it is plugged in.', 'Leave fixed wiring to an electrician.'])
      expect(first?.text).toContain(words);
  });

  it('is asked by no pack without skills, and the page says so', async () => {
    const { app, wilf, tessa, ids } = world;
    await app.rows("UPDATE pack SET skills = '[]'");
    app.clock.forward(120_000);
    expect((await wilf.get('/skills')).words).toContain('The packs here have no practical skills for where you live.');
    expect((await tessa.get(`${grid}/sheet`)).status).toBe(200);
    expect((await tessa.get(`${grid}/${ids.odo}`)).words).toContain('Signed before, and asked no more');
  });
});
