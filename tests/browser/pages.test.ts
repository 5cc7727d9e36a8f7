import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Pack } from '../../src/core/pack.js';
import { readPackFolder } from '../../src/packs/index.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { dayNumber } from '../../src/core/calendar.js';
import { testApp, type TestApp } from '../support/app.js';
import { addMember } from '../support/classes.js';
import { chromiumPath, device, launch, listen, phone, wordsOf } from './device.js';
import { faultsOf } from './faults.js';
import { comeIn, fillParts, goOn, handIn, isNumber, isQuestion } from './candidate.js';

/** Every page as it is drawn, with the pack that is shipped: for all eyes, at a phone's and a desk's width, in light and dark. */

const writes = process.env['RUNGWISE_WRITE_SCREENS'] === 'yes';
const screens = join(projectFolder, 'tests', 'browser', 'screens');

describe.skipIf(chromiumPath === undefined)('every page', () => {
  let app: TestApp;
  let pack: Pack;
  let browser: Browser;
  let address: string;
  beforeAll(async () => {
    const read = await readPackFolder(join(projectFolder, 'question-packs', 'entry-safety'), { tryFamilies: false });
    if (read.pack === null) throw new Error('The shipped pack has errors.');
    pack = read.pack;
    app = await testApp({ pack });
    [browser, address] = await Promise.all([launch(), listen(app)]);
    if (writes) await mkdir(screens, { recursive: true });
  });
  afterAll(async () => {
    await browser?.close();
    await app?.close();
  });

  /** Pictures for the README, only when they are asked for. */
  async function picture(page: Page, name: string, viewport = { width: 1100, height: 760 }): Promise<void> {
    if (!writes) return;
    await page.setViewportSize(viewport);
    await page.evaluate(() => {
      (document.activeElement as HTMLElement | null)?.blur();
      return document.fonts.ready.then(() => undefined);
    });
    await page.screenshot({ path: join(screens, `${name}.png`) });
    await page.setViewportSize(phone);
  }

  const plain = (text: string): string => text.replace(/\s+/g, ' ').trim();

  /** The text of the right option, for a fixed question of the pack. */
  async function keyText(page: Page): Promise<string | undefined> {
    const stem = await wordsOf(page, 'h1');
    const question = pack.questions.find((each) => plain(each.stem) === stem);
    return question?.kind === 'single' ? question.options.find(({ key }) => key === true)?.text : undefined;
  }

  async function choose(page: Page, key: string | undefined, right: boolean): Promise<void> {
    if (await isNumber(page)) return await page.locator('#answer').fill('1');
    if ((await page.locator('.parts').count()) > 0) return await fillParts(page);
    const options = page.locator('label.opt');
    const texts = await page.locator('label.opt > span:last-child').allInnerTexts();
    const place = texts.findIndex((text) => key !== undefined && plain(text) === plain(key));
    if (key !== undefined && place === -1) throw new Error(`"${key}" is not among ${texts.join(' / ')}`);
    await options.nth(right ? Math.max(place, 0) : (place + 1) % texts.length).click();
  }

  it('is free of what axe finds, has one main heading and fits a phone: before one comes in', async () => {
    const { page, context, complaints } = await device(browser, address);
    const faults: string[] = [];
    for (const path of ['/', '/return', '/sign-in', '/about']) {
      await page.goto(path);
      faults.push(...(await faultsOf(page, path)));
      if (path === '/') await picture(page, 'welcome');
    }
    expect(complaints).toEqual([]);
    await page.goto('/return');
    await page.locator('#phrase').fill('seven words that are not on it');
    await page.getByRole('button', { name: 'Come in' }).click();
    expect(await wordsOf(page, '.plate')).toContain('Not let in yet.');
    faults.push(...(await faultsOf(page, 'a phrase refused')));
    await page.goto('/no-such-page');
    expect(await page.locator('.sheet-head').innerText()).toContain('404');
    faults.push(...(await faultsOf(page, 'error 404')));
    expect(faults).toEqual([]);
    await context.close();
  }, 300_000);

  it('is so for a candidate from the phrase to the end of a round, and a question prints without its buttons', async () => {
    const { page, context, requests, complaints } = await device(browser, address);
    const faults: string[] = [];
    const seen = new Set<string>();
    const once = async (name: string, applies = true): Promise<void> => {
      if (!applies || seen.has(name)) return;
      seen.add(name);
      faults.push(...(await faultsOf(page, name)));
    };
    await comeIn(page, 'Wren');
    await once('phrase');
    await page.goto('/');
    await once('now at first');
    await page.goto('/me');
    await once('me');
    await page.goto('/plan');
    await page.locator('#exam').fill('2027-01-15');
    await page.getByRole('button', { name: 'Save the plan' }).click();
    await page.getByText('The same as a table').click();
    await once('plan');
    await page.goto('/outlook');
    await once('outlook at first');
    const wanted = ['single', 'number', 'number not understood', 'right', 'wrong number', 'wrong option', 'retry'];
    for (let round = 0; round < 4 && !wanted.every((name) => seen.has(name)); round += 1) {
      await page.goto('/');
      await page.getByRole('button', { name: /^20 minutes/ }).click();
      while (await isQuestion(page)) {
        const [typed, retry] = [await isNumber(page), (await page.getByText('Once more, with fresh numbers').count()) > 0];
        const key = await keyText(page);
        if (retry) await once('retry');
        await once(typed ? 'number' : 'single');
        if (key !== undefined && !seen.has('printed')) {
          seen.add('printed');
          await picture(page, 'question');
          await page.emulateMedia({ media: 'print' });
          expect(await page.locator('h1').isVisible()).toBe(true);
          expect(await page.locator('label.opt:visible').count()).toBeGreaterThan(2);
          expect(await page.locator('button:visible, .btn:visible, nav:visible').count()).toBe(0);
          expect((await page.pdf({ preferCSSPageSize: true })).subarray(0, 5).toString('latin1')).toBe('%PDF-');
          await page.emulateMedia({ media: 'screen' });
        }
        if (typed && !seen.has('number not understood')) {
          await picture(page, 'question-phone', { width: 360, height: 720 });
          await page.locator('#answer').fill('about a lot');
          await handIn(page, 'Sure');
          expect(await wordsOf(page, '.plate')).toContain('Not handed in yet.');
          await once('number not understood');
        }
        const right = key !== undefined && !seen.has('right');
        await choose(page, key, right);
        await handIn(page, right ? 'Sure' : 'Guessing');
        const verdict = (await wordsOf(page, 'h1 .word')).startsWith('Right');
        if (key !== undefined) expect(verdict).toBe(right);
        const sort = verdict ? 'right' : typed ? 'wrong number' : 'wrong option';
        if (sort === 'wrong number' && !seen.has(sort)) await picture(page, 'outcome');
        await once(sort);
        await goOn(page);
      }
      await once('end of the round');
    }
    for (const [path, name] of [
      ['/progress', 'progress'],
      ['/progress/answers', 'answers'],
      ['/outlook', 'outlook'],
    ] as const) {
      await page.goto(path);
      await once(name);
    }
    await page.goto('/');
    await once('now with days');
    await picture(page, 'now');
    expect([...wanted, 'end of the round'].filter((name) => !seen.has(name))).toEqual([]);
    expect(faults).toEqual([]);
    expect([...new Set(requests.filter(({ protocol }) => protocol !== 'about:').map(({ origin }) => origin))]).toEqual([address]);
    // The one refused form answers 422, which the browser mentions; nothing else may be said.
    expect(complaints.filter((text) => !text.includes('status of 422'))).toEqual([]);
    await context.close();
  }, 300_000);

  it('is so for those who teach and run the server: set-up, staff, invitation and classes', async () => {
    const { page, context } = await device(browser, address);
    const faults: string[] = [];
    const look = async (name: string) => void faults.push(...(await faultsOf(page, name)));
    await page.goto(`/set-up/${await app.accounts.setUpToken()}`);
    await look('set-up');
    await page.locator('#name').fill('Alma');
    await page.locator('#password').fill('four kettles on a hill');
    await page.getByRole('button', { name: 'Save and sign in' }).click();
    await look('no class yet');
    await page.goto('/staff');
    await page.locator('#name').fill('Tessa');
    await page.getByLabel('Tutor', { exact: true }).check();
    await page.getByRole('button', { name: 'Make the link' }).click();
    await look('staff with an invitation');
    const link = (await page.locator('.plate.must a').getAttribute('href')) ?? '';
    await page.goto('/me');
    await look('me of the administrator');

    const tutor = await device(browser, address);
    await tutor.page.goto(link);
    faults.push(...(await faultsOf(tutor.page, 'invitation')));
    await tutor.page.locator('#password').fill('nine lanterns by the weir');
    await tutor.page.getByRole('button', { name: 'Save and sign in' }).click();
    await app.rows(`WITH made AS (INSERT INTO study_class (name, exam_on) VALUES ('Nether Wobbling Radio Club, winter class', '2027-02-20') RETURNING id),
      t AS (INSERT INTO class_tutor (class_id, person_id) SELECT made.id, person.id FROM made, person WHERE role = 'tutor')
      INSERT INTO class_member (class_id, person_id) SELECT made.id, person.id FROM made, person WHERE role = 'candidate'`);
    for (const name of ['Odo', 'Tansy', 'Bryony Longname of the Lower Marsh']) await someHistory(name);
    await tutor.page.goto('/');
    faults.push(...(await faultsOf(tutor.page, 'classes')));
    await fillClass();
    await tutor.page.getByRole('link', { name: 'Who needs help' }).click();
    expect(await tutor.page.locator('.classgrid tbody tr').count()).toBeGreaterThan(10);
    faults.push(...(await faultsOf(tutor.page, 'class grid')));
    await picture(tutor.page, 'tutor', { width: 1280, height: 1000 });
    expect(faults).toEqual([]);
    await tutor.context.close();
    await context.close();
  }, 300_000);

  /** Ten more in the class, who know what a fixed pattern says. */
  async function fillClass(): Promise<void> {
    const [made] = await app.rows<{ id: number }>("UPDATE study_class SET paper = 'entry-safety/safety-26' RETURNING id");
    const people = [
      'Ivo Crackthorn',
      'Perpetua Moss',
      'Cosmo Dabbs',
      'Hester Plumbe',
      'Barnaby Thrupp',
      'Tansy Quill',
      'Zelda Marrow',
      'Mungo Tarn',
    ];
    for (const [index, name] of people.entries()) {
      const person = await addMember(app, made?.id ?? 0, name, { seenAt: index === 2 ? '2026-11-12T19:00:00Z' : '2026-11-24T19:00:00Z' });
      await app.rows(
        `WITH known AS (
           UPDATE memory m SET stability = 1 + (question_id * 13 + $2 * 7) % (4 + 9 * $2), difficulty = 5, last_day = $3 - question_id % 9, due_day = $3, reps = 1
           FROM question q WHERE q.id = m.question_id AND m.person_id = $1 AND (question_id * 31 + $2 * 17) % 10 < 3 + $2 / 2 RETURNING question_id
         )
         INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", rating, day, answered_at, reps_after)
         SELECT gen_random_uuid(), $1, k.question_id, q.current_revision, 1, 'uk', '', 'fairly', (k.question_id * 7) % 10 < 3 + $2, 3, $3 - 9, now(), 1
         FROM known k JOIN question q ON q.id = k.question_id`,
        [person, index, dayNumber(app.clock.now().getTime(), 'Europe/London')],
      );
    }
  }

  /** A candidate of the class who has answered two questions, somehow. */
  async function someHistory(name: string): Promise<void> {
    const visitor = app.visitor();
    await visitor.start(name);
    await app.rows(
      'INSERT INTO class_member (class_id, person_id) SELECT c.id, p.id FROM study_class c, person p WHERE p.display_name = $1',
      [name],
    );
    const round = await visitor.round('5');
    for (let asked = 0; asked < 2; asked += 1) {
      const page = await visitor.get(round);
      const option = page.html.querySelector('input[name=option]')?.getAttribute('value');
      await visitor.submit(page, '/study/answer', { ...(option === undefined ? { value: '1' } : { option }), certainty: 'sure' });
    }
  }
});
