import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { calculations } from '../../shared/safety-maths/index.js';
import { readPackFolder } from '../../src/packs/index.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { exampleAddress } from '../support/calculator-examples.js';
import { testApp, type Shown, type TestApp } from '../support/app.js';

let app: TestApp;
beforeAll(async () => {
  const { pack } = await readPackFolder(join(projectFolder, 'question-packs', 'entry-safety'), { tryFamilies: false });
  if (pack === null) throw new Error('The shipped pack has errors.');
  app = await testApp({ pack });
});
afterAll(() => app.close());

const get = (path: string): Promise<Shown> => app.visitor().get(path);
const spaced = (text: string | undefined): string => (text ?? '').replace(/\s/g, ' ');
const answer = (page: Shown): string | undefined => page.html.querySelector('.big-answer')?.text.replace(/\s/g, ' ');
const paged = calculations.filter(({ foundBy }) => foundBy.length > 0);

describe('the list of calculators', () => {
  it('is open to everybody and links to every calculator that has a page', async () => {
    const page = await get('/calculators');
    expect(page.status).toBe(200);
    const hrefs = page.html.querySelectorAll('.calcs a').map((link) => link.getAttribute('href'));
    expect(hrefs).toEqual(expect.arrayContaining(paged.map(({ id }) => `/calculators/${id}`)));
    expect(paged.length).toBeGreaterThanOrEqual(45);
  });

  it('finds by plain words, and says so when nothing fits', async () => {
    const found = await get('/calculators?q=fuse+for+a+kettle');
    expect(found.html.querySelectorAll('.calcs a').map(({ text }) => text)).toContain('Smallest listed fuse for an appliance');
    const none = await get('/calculators?q=zebra');
    expect(none.words).toContain('No calculator fits “zebra”');
    expect(none.html.querySelector('#q')?.getAttribute('value')).toBe('zebra');
  });
});

describe('a calculator', () => {
  it('works what stands in the address: answer, working, formula, source and caution', async () => {
    // 1150 W / 230 V = 5 A; the first of 3, 5, 10, 13 A not below it is 5 A.
    const page = await get('/calculators/fuse-from-power?power=1.15+kW&region=uk');
    expect(page.status).toBe(200);
    expect(answer(page)).toBe('5 A');
    expect(page.html.querySelectorAll('#result math').length).toBeGreaterThan(0);
    expect(page.words).toContain('not a design approval');
    expect(page.html.querySelector('.plate.warn')?.text).toContain('Unplug before opening a plug');
    expect(page.html.querySelector('.titleblock')?.text).toContain('BS 1362');
    expect(page.html.querySelector('#in-power')?.getAttribute('value')).toBe('1.15 kW');
    expect(spaced(page.html.querySelector('#drawing svg desc')?.text)).toContain('5 A');
  });

  it('goes by the region: 1200 W are 5.22 A at 230 V and 10 A at 120 V', async () => {
    expect(answer(await get('/calculators/fuse-from-power?power=1200&region=uk'))).toBe('10 A');
    expect(answer(await get('/calculators/fuse-from-power?power=1200&region=eu'))).toBe('6 A');
    expect(answer(await get('/calculators/fuse-from-power?power=1200&region=na'))).toBe('15 A');
  });

  it('asks for what is missing, and says beside the field what does not fit, keeping what was typed', async () => {
    const empty = await get('/calculators/current-from-power');
    expect(empty.status).toBe(200);
    expect(empty.html.querySelector('#result')?.text).toContain('Type the numbers');
    const half = await get('/calculators/field-strength?eirp=100');
    expect(half.html.querySelector('#result')?.text).toContain('Still to be typed: distance');
    const wrong = await get('/calculators/field-strength?eirp=five&distance=10+A');
    expect(wrong.status).toBe(422);
    expect(wrong.html.querySelector('#in-eirp-why')?.text).toContain('figures');
    expect(wrong.html.querySelector('#in-distance-why')?.text).toContain('current');
    expect(wrong.html.querySelector('#in-distance')?.getAttribute('value')).toBe('10 A');
    const large = await get('/calculators/ladder-base?height=300');
    expect(large.status).toBe(422);
    expect(large.html.querySelector('#in-height-why')?.text).toContain('out of range');
  });

  it('takes several numbers of a list from several boxes', async () => {
    const page = await get('/calculators/extension-lead-load?loads=2000&loads=&loads=990&region=uk');
    expect(page.html.querySelector('#result')?.text.replace(/\s/g, ' ')).toContain('13 A');
    expect(page.html.querySelectorAll('input[name=loads]')).toHaveLength(6);
  });

  it.each(paged.map(({ id }) => [id]))('%s has a page that opens empty, and one link to each family it helps with', async (id) => {
    const page = await get(`/calculators/${id}`);
    expect(page.status).toBe(200);
    expect(page.html.querySelectorAll('h1')).toHaveLength(1);
    expect(page.html.querySelectorAll('form [name]').length).toBeGreaterThan(0);
    for (const link of page.html.querySelectorAll('.calcs a')) expect((await get(link.getAttribute('href') ?? '')).status).toBe(302);
  });

  it.each(paged.map(({ id }) => [id]))('%s works an example: an answer, its working, nothing that is no word and no figure', async (id) => {
    const path = exampleAddress(id);
    if (path === null) throw new Error(`no example of ${id} is at hand`);
    const page = await get(path);
    expect([page.status, page.html.querySelector('.why')?.text ?? '']).toEqual([200, '']);
    expect(answer(page)).toMatch(/\S/);
    expect(page.html.querySelectorAll('ol.working li').length).toBeGreaterThan(0);
    expect(page.words).not.toMatch(/\bNaN\b|undefined|\[object|\bnull\b/);
    expect(page.html.querySelectorAll('.titleblock').length).toBe(1);
  });

  it('is not there under another name, and bears any address', async () => {
    for (const path of [
      '/calculators/nothing',
      '/calculators/__proto__',
      '/calculators/constructor',
      '/calculators/fuse-from-power/try/nothing',
    ])
      expect((await get(path)).status).toBe(404);
    for (const query of [
      '__proto__=1',
      'power[]=1',
      'power=' + '9'.repeat(500),
      'power=1&'.repeat(30),
      'region=xx',
      '%00=%00',
      'power=%ff',
    ])
      expect([200, 422]).toContain((await get(`/calculators/fuse-from-power?${query}`)).status);
    const marked = await get('/calculators/fuse-from-power?power=%3Cscript%3E');
    expect(marked.text).not.toContain('<script>');
  });
});

describe('a question to try', () => {
  it('gives fresh numbers, marks them without a record, names the mistake and shows the working and the calculator', async () => {
    const start = await get('/calculators/current-from-power/try/nf-current-from-power');
    expect(start.location).toMatch(/\?form=typed&seed=\d+&region=uk$/);
    // Seed 1 in the uk: what the numbers are is read from the story.
    const asked = await get('/calculators/current-from-power/try/nf-current-from-power?seed=1&region=uk');
    const watts = Number(/(\d+) W/.exec(asked.words)?.[1]);
    const right = await get(`/calculators/current-from-power/try/nf-current-from-power?seed=1&region=uk&value=${(watts / 230).toFixed(3)}`);
    expect(right.html.querySelector('.plate.yes')?.text).toContain('Right.');
    expect(right.html.querySelectorAll('.formula math').length).toBeGreaterThan(0);
    expect(right.html.querySelectorAll('a').map((link) => link.getAttribute('href'))).toContainEqual(
      expect.stringMatching(new RegExp(`^/calculators/current-from-power\\?.*power=${watts}\\b`)),
    );
    const wrong = await get(`/calculators/current-from-power/try/nf-current-from-power?seed=1&region=uk&value=${watts * 230}`);
    expect(wrong.html.querySelector('.plate.no')?.text).toContain('Not right.');
    expect(wrong.html.querySelectorAll('.tells li').length).toBeGreaterThan(0);
    const slipped = await get(
      `/calculators/current-from-power/try/nf-current-from-power?seed=1&region=uk&value=${((watts / 230) * 10).toFixed(3)}`,
    );
    expect(slipped.html.querySelector('.tells')?.text).toContain('ten times too large');
    expect((await app.rows('SELECT 1 FROM answer')).length).toBe(0);
  });

  it('asks the same with four answers, one of them right', async () => {
    const base = '/calculators/current-from-power/try/nf-current-from-power?form=options&seed=3&region=uk';
    const asked = await get(base);
    const values = asked.html.querySelectorAll('input[name=option]').map((input) => input.getAttribute('value') ?? '');
    expect(values).toHaveLength(4);
    const verdicts = await Promise.all(
      values.map(async (value) => (await get(`${base}&option=${value}`)).html.querySelector('.plate .word')?.text),
    );
    expect(verdicts.filter((word) => word === 'Right.')).toHaveLength(1);
    expect(asked.text).not.toContain('Right.');
  });

  it('comes back when nothing was understood, with what was typed', async () => {
    const page = await get('/calculators/current-from-power/try/nf-current-from-power?seed=1&region=uk&value=lots');
    expect(page.html.querySelector('#answer')?.getAttribute('value')).toBe('lots');
    expect(page.html.querySelector('#answer-why')?.text).toContain('no number');
  });
});
