import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { packsService } from '../../src/packs/index.js';
import { enrolAll } from '../../src/study/index.js';
import type { Shown } from '../support/app.js';
import { fieldsOf, sign, skilledApp, ticks, type Skilled } from '../support/skilled.js';
import { packWithSkills, smallSkills } from '../support/small-skills.js';

/** A tutor signs skills and takes signatures back. The clock stands on Thursday 26 November 2026, 19:30. */

let world: Skilled;
let sheet: string;
beforeAll(async () => {
  world = await skilledApp();
  sheet = `/classes/${world.ids.class}/skills/${world.ids.odo}`;
});
afterAll(() => world.app.close());
beforeEach(async () => {
  world.app.clock.set('2026-11-26T19:30:00Z');
  await world.app.rows('DELETE FROM sign_off');
  await load();
});

/** Loads the pack with these skills, at a later moment, so that nothing is answered from memory. */
async function load(skills = smallSkills): Promise<void> {
  await packsService({ db: world.app.db, enrolAll }).load(packWithSkills(skills));
  world.app.clock.forward(120_000);
}

interface Row {
  id: string;
  skill: string;
  body: { packTitle: string; title: string; criteria: string[] };
  remarks: string;
  seen_on: string;
  signer_name: string;
  withdrawn_by: string | null;
  reason: string | null;
}
const rows = (): Promise<Row[]> => world.app.rows<Row>('SELECT * FROM sign_off ORDER BY signed_at, id');
const skillPart = (page: Shown, skill = 'small_lead') => page.html.querySelector(`#${skill}`);
const ticked = (page: Shown): (string | undefined)[] => page.html.querySelectorAll('[type=checkbox][checked]').map((box) => box.id);

describe('a skill that was shown', () => {
  it('is signed with everything ticked, kept as it stood, and shown with tutor, day and remarks', async () => {
    const { tessa, app, ids } = world;
    const sent = await sign(tessa, sheet, 'small/lead', { ...ticks(3), seenOn: '2026-11-19', remarks: 'Slow & careful.' });
    expect([sent.status, sent.location]).toEqual([303, `${sheet}#small_lead`]);
    const [row] = await rows();
    expect(row).toMatchObject({
      skill: 'small/lead',
      body: { packTitle: 'Small pack', title: 'Look over a lead', criteria: ['Unplugs it.', 'Looks along it.', 'Labels it.'] },
      remarks: 'Slow & careful.',
      seen_on: '2026-11-19',
      signer_name: 'Tessa',
    });
    expect(await app.rows('SELECT person_id, signed_by FROM sign_off')).toEqual([
      { person_id: ids.odo, signed_by: (await app.rows<{ id: number }>("SELECT id FROM person WHERE display_name = 'Tessa'"))[0]?.id },
    ]);
    const page = await tessa.get(sheet);
    expect(page.words).toContain('1 of 2 signed.');
    const part = skillPart(page);
    expect(part?.querySelector('summary')?.text.trim()).toBe('Look over a lead: signed, seen on 19 Nov 2026');
    expect(part?.text).toContain('Seen on 19 Nov 2026, signed on 26 Nov 2026 by Tessa.');
    expect(part?.text).toContain('Slow & careful.');
    expect(part?.querySelector('input[name=skill]')).toBeNull();
  });

  it('stands in the form with today in the tutor’s time zone, and no later day to choose', async () => {
    const { tessa, app } = world;
    await app.rows("UPDATE person SET time_zone = 'Pacific/Auckland' WHERE display_name = 'Tessa'");
    const box = skillPart(await tessa.get(sheet))?.querySelector('input[name=seenOn]');
    // 19:32 in Greenwich is 08:32 of the next day in Auckland, 13 hours ahead in November.
    expect([box?.getAttribute('value'), box?.getAttribute('max')]).toEqual(['2026-11-27', '2026-11-27']);
    expect((await sign(tessa, sheet, 'small/lead', { ...ticks(3), seenOn: '2026-11-27' })).status).toBe(303);
    await app.rows("UPDATE person SET time_zone = 'Europe/London' WHERE display_name = 'Tessa'");
  });

  it('is not signed with something unticked: what was ticked and typed comes back, and what is missing is named', async () => {
    const { tessa } = world;
    const sent = await sign(tessa, sheet, 'small/plug', { c1: 'on', c3: 'on', seenOn: '2026-11-20', remarks: 'Nearly <there>.' });
    expect(sent.status).toBe(422);
    expect(await rows()).toEqual([]);
    expect(ticked(sent)).toEqual(['small_plug-c1', 'small_plug-c3']);
    expect(skillPart(sent, 'small_plug')?.querySelector('details')?.hasAttribute('open')).toBe(true);
    expect(skillPart(sent, 'small_plug')?.querySelector('[name=seenOn]')?.getAttribute('value')).toBe('2026-11-20');
    expect(skillPart(sent, 'small_plug')?.querySelector('textarea')?.text).toBe('Nearly <there>.');
    const plate = sent.html.querySelector('.plate.no a');
    expect(plate?.text).toBe('2 criteria are not ticked. Sign when all of it was seen; what you filled in is still here.');
    expect(plate?.getAttribute('href')).toBe('#small_plug-c2');
    const missing = skillPart(sent, 'small_plug')?.querySelectorAll('[type=checkbox][aria-invalid]');
    expect(missing?.map((box) => box.id)).toEqual(['small_plug-c2', 'small_plug-c4']);
  });

  it.each([
    ['a day that has not come', { seenOn: '2026-11-27' }, 'That day has not come yet.', '#small_lead-day'],
    ['a day more than a year ago', { seenOn: '2025-11-20' }, 'That is more than a year ago.', '#small_lead-day'],
    ['what is no day', { seenOn: '31 Feb' }, 'This is no date.', '#small_lead-day'],
    ['remarks that are too long', { remarks: 'x'.repeat(301) }, 'That has 301 letters, and 300 fit.', '#small_lead-remarks'],
  ])('is not signed for %s, and the ticks stay', async (_what, fields, why, target) => {
    const sent = await sign(world.tessa, sheet, 'small/lead', { ...ticks(3), ...fields });
    expect(sent.status).toBe(422);
    expect(sent.html.querySelector('.plate.no a')?.text).toContain(why);
    expect(sent.html.querySelector('.plate.no a')?.getAttribute('href')).toBe(target);
    expect(ticked(sent)).toHaveLength(3);
    expect(await rows()).toEqual([]);
  });

  it('is signed once, however often the form is sent, at once or later', async () => {
    const { tessa } = world;
    const filled = { ...fieldsOf(await tessa.get(sheet), 'small/lead'), ...ticks(3) };
    const sent = await Promise.all([1, 2, 3].map(() => tessa.send('POST', sheet, filled)));
    expect(sent.map(({ status }) => status)).toEqual([303, 303, 303]);
    expect((await tessa.send('POST', sheet, { ...filled, remarks: 'Again' })).status).toBe(303);
    expect((await rows()).map(({ remarks }) => remarks)).toEqual(['']);
  });

  it('is signed once by two tutors at the same moment, and the second is told by whom', async () => {
    const { tessa, administrator } = world;
    const forms = await Promise.all([tessa, administrator].map((one) => one.get(sheet)));
    const sent = await Promise.all(
      [tessa, administrator].map((one, at) => one.send('POST', sheet, { ...fieldsOf(forms[at] as Shown, 'small/lead'), ...ticks(3) })),
    );
    expect(sent.map(({ status }) => status).sort()).toEqual([303, 422]);
    const [row] = await rows();
    expect(await rows()).toHaveLength(1);
    const late = sent.find(({ status }) => status === 422);
    expect(late?.html.querySelector('.plate.no a')?.text).toBe(`${row?.signer_name} has signed it already, as seen on 26 Nov 2026.`);
    expect(late?.html.querySelector('.plate.no a')?.getAttribute('href')).toBe('#small_lead');
  });

  it('is not signed when the pack asks something else by then; the remarks stay and the ticks do not', async () => {
    const { tessa } = world;
    const filled = { ...fieldsOf(await tessa.get(sheet), 'small/lead'), ...ticks(3), remarks: 'Good.' };
    const [lead, ...rest] = structuredClone(smallSkills);
    if (lead?.criteria[1]) lead.criteria[1].text = 'Looks along it, and under it.';
    await load([lead as (typeof smallSkills)[number], ...rest]);
    const sent = await tessa.send('POST', sheet, filled);
    expect(sent.status).toBe(422);
    expect(sent.html.querySelector('.plate.no a')?.text).toContain('What this skill asks was changed meanwhile.');
    expect(ticked(sent)).toEqual([]);
    expect(skillPart(sent)?.querySelector('textarea')?.text).toBe('Good.');
    expect(await rows()).toEqual([]);
  });

  it('keeps what was signed when the pack changes, says so, and keeps it when the skill is gone', async () => {
    const { tessa, odo } = world;
    await sign(tessa, sheet, 'small/lead', ticks(3));
    const [lead, plug] = structuredClone(smallSkills);
    if (lead?.criteria[0]) lead.criteria[0].text = 'Unplugs both ends.';
    await load([lead as (typeof smallSkills)[number]]);
    const page = await tessa.get(sheet);
    expect(skillPart(page)?.text).toContain('What the pack asks for this skill has changed since.');
    expect(skillPart(page)?.text).toContain('Unplugs it.');
    await load([plug as (typeof smallSkills)[number]]);
    const later = await tessa.get(sheet);
    expect(later.words).toContain('Signed before, and asked no more Look over a lead Seen and signed on 26 Nov 2026 by Tessa.');
    expect(later.words).toContain('0 of 1 signed.');
    expect((await odo.get('/skills')).words).toContain('Look over a lead: signed');
  });

  it.each([
    ['an id that is none', { id: 'x' }],
    ['a skill that is no name', { skill: 'small lead' }],
    ['a tick that is no tick', { c1: 'yes' }],
  ])('refuses %s, which only a changed page sends', async (_what, fields) => {
    expect((await sign(world.tessa, sheet, 'small/lead', { ...ticks(3), ...fields })).status).toBe(400);
    expect(await rows()).toEqual([]);
  });

  it('refuses an id that another signature has', async () => {
    const { tessa } = world;
    const id = randomUUID();
    await sign(tessa, sheet, 'small/lead', { ...ticks(3), id });
    expect((await sign(tessa, sheet, 'small/plug', { ...ticks(4), id })).status).toBe(400);
    expect(await rows()).toHaveLength(1);
  });
});

describe('a signature that is withdrawn', () => {
  const signed = async (): Promise<string> => {
    await sign(world.tessa, sheet, 'small/lead', ticks(3));
    return (await rows())[0]?.id ?? '';
  };
  const withdraw = async (reason: string): Promise<Shown> => {
    const page = await world.administrator.get(sheet);
    return await world.administrator.submit(page, `${sheet}/withdraw`, { reason });
  };

  it('stays in the record, struck out, with who, when and why, and the skill can be signed again', async () => {
    await signed();
    world.app.clock.set('2026-11-27T06:00:00Z');
    expect((await withdraw('It was Wilf’s lead.')).status).toBe(303);
    for (const address of [sheet, `${sheet}/record`]) {
      const page = await world.tessa.get(address);
      expect(page.html.querySelector('s')?.text).toContain('Look over a lead. Seen and signed on 26 Nov 2026 by Tessa.');
      expect(page.words).toContain('Withdrawn on 27 Nov 2026 by Alma: It was Wilf’s lead.');
    }
    expect((await world.odo.get('/skills')).words).toContain('Withdrawn on 27 Nov 2026 by Alma: It was Wilf’s lead.');
    expect((await world.tessa.get(sheet)).words).toContain('0 of 2 signed.');
    const grid = await world.tessa.get(`/classes/${world.ids.class}/skills`);
    expect(grid.html.querySelector('tbody td .vh')?.text).toBe('not yet');
    expect((await sign(world.tessa, sheet, 'small/lead', ticks(3))).status).toBe(303);
    expect((await world.tessa.get(sheet)).words).toContain('1 of 2 signed.');
    expect(await rows()).toHaveLength(2);
  });

  it('needs a reason, and what was typed comes back with the form open', async () => {
    await signed();
    for (const [reason, why] of [
      ['  ', 'Write why it is withdrawn'],
      ['x'.repeat(301), 'That has 301 letters'],
    ] as const) {
      const sent = await withdraw(reason);
      expect(sent.status).toBe(422);
      expect(sent.html.querySelector('.plate.no a')?.text).toContain(why);
      const box = sent.html.querySelector('input[name=reason][aria-invalid]');
      expect(box?.getAttribute('value')).toBe(reason);
      expect(sent.html.querySelector('.plate.no a')?.getAttribute('href')).toBe(`#${box?.id}`);
      expect(skillPart(sent)?.querySelectorAll('details[open]')).toHaveLength(2);
    }
    expect((await rows())[0]?.withdrawn_by).toBeNull();
  });

  it('is withdrawn once: sent again, the first reason stands', async () => {
    const id = await signed();
    await withdraw('First.');
    const csrf = (await world.tessa.get(sheet)).html.querySelector('input[name=_csrf]')?.getAttribute('value') ?? '';
    expect((await world.tessa.send('POST', `${sheet}/withdraw`, { _csrf: csrf, id, reason: 'Second.' })).status).toBe(303);
    expect((await rows())[0]).toMatchObject({ withdrawn_by: 'Alma', reason: 'First.' });
  });

  it('does not come to life again when its form is sent once more', async () => {
    const filled = { ...fieldsOf(await world.tessa.get(sheet), 'small/lead'), ...ticks(3) };
    await world.tessa.send('POST', sheet, filled);
    await withdraw('By mistake.');
    expect((await world.tessa.send('POST', sheet, filled)).status).toBe(303);
    expect(await rows()).toHaveLength(1);
    expect((await world.tessa.get(sheet)).words).toContain('0 of 2 signed.');
  });
});
