import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FixedKind } from '../../src/core/questions/schema.js';
import { packsService } from '../../src/packs/index.js';
import { enrolAll } from '../../src/study/index.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { sampleOf, twoShapes } from '../support/kind-samples.js';
import { smallPack } from '../support/small-pack.js';
import { staffOf } from '../support/staff.js';

/** A tutor looks for questions and reads them with their keys. The questions stand in ../support/kind-samples.ts and small-pack.ts. */

const kinds: FixedKind[] = ['several', 'order', 'pairs', 'place'];
const small = smallPack();
const pack = { ...small, questions: [...small.questions, ...kinds.map(sampleOf)], drawings: [twoShapes] };

let app: TestApp;
let tutor: Visitor;
beforeAll(async () => {
  app = await testApp({ pack });
  ({ tutor } = await staffOf(app));
});
afterAll(() => app.close());

const codes = (page: Shown): string[] => page.html.querySelectorAll('.bank li a').map((link) => link.text.trim());
const find = (query: Record<string, string>): Promise<Shown> => tutor.get(`/bank?${new URLSearchParams(query).toString()}`);
async function open(code: string, query = ''): Promise<Shown> {
  const link = (await find({ text: code })).html.querySelectorAll('.bank li a').find((each) => each.text.trim() === code);
  return await tutor.get(`${link?.getAttribute('href')?.split('?')[0] ?? ''}${query}`);
}

describe('the bank', () => {
  it('is for tutors and administrators alone', async () => {
    const candidate = app.visitor('10.0.0.9');
    await candidate.start('Odo');
    for (const address of ['/bank', '/bank/questions/1']) {
      expect((await candidate.get(address)).status).toBe(403);
      expect((await app.visitor('10.0.0.8').get(address)).status).toBe(401);
    }
    expect((await candidate.get('/')).html.querySelector('nav a[href="/bank"]')).toBeNull();
    expect((await tutor.get('/')).html.querySelector('nav a[href="/bank"]')).not.toBeNull();
  });

  it('lists every question by objective, families last', async () => {
    const page = await tutor.get('/bank');
    expect(codes(page)).toHaveLength(pack.questions.length + pack.families.length);
    expect(page.html.querySelectorAll('main h2').map((heading) => heading.text.trim().slice(0, 5))).toEqual(
      [...new Set([...pack.questions.map(({ objective }) => objective), 'AA-01', 'BB-01', 'CC-01'])].sort(),
    );
    expect(codes(page).indexOf('nf-twice')).toBeGreaterThan(codes(page).indexOf('AA-01-102'));
  });

  it('is narrowed by topic, objective and kind, and the form keeps what was chosen', async () => {
    const all = await tutor.get('/bank');
    const valueOf = (text: string): string =>
      all.html
        .querySelectorAll('#where option')
        .find((option) => option.text.trim().startsWith(text))
        ?.getAttribute('value') ?? '';
    const inTopic = await find({ where: valueOf('BB ') });
    expect(codes(inTopic).length).toBeGreaterThan(0);
    expect(codes(inTopic).every((code) => code.startsWith('BB') || code.startsWith('nf-'))).toBe(true);
    expect(inTopic.html.querySelector('#where option[selected]')?.text).toContain('BB ');
    expect(codes(await find({ where: valueOf('AA-01'), kind: 'order' }))).toEqual(['AA-01-102']);
    expect(codes(await find({ kind: 'numeric' })).every((code) => code.startsWith('nf-'))).toBe(true);
  });

  it('is searched by words anywhere in a question, in any order and any case', async () => {
    expect(codes(await find({ text: 'charger INSTRUCTIONS' }))).toEqual(['AA-01-102']);
    expect(codes(await find({ text: 'charger aardvark' }))).toEqual([]);
    expect((await find({ text: 'aardvark' })).words).toContain('Nothing in the bank fits.');
    expect(codes(await find({ text: 'aa-01-101' }))).toEqual(['AA-01-101']);
  });

  it.each(['100%', '_', '\\', "'; DROP TABLE query; --", '<b>', '%%', 'bell\u0000'])('takes %j as words and nothing else', async (text) => {
    const page = await find({ text });
    expect(page.status).toBe(200);
    expect(codes(page)).toEqual([]);
  });

  it.each(['where=x', 'where=t99999999999999', 'kind=card', 'page=0', 'page=-1', 'page=1e9', 'retired=maybe', 'where=t1&where=t2'])(
    'reads an address that it cannot mean as if %s did not stand there',
    async (query) => {
      const page = await tutor.get(`/bank?${query}`);
      expect(page.status).toBe(200);
      expect(codes(page)).toHaveLength(pack.questions.length + pack.families.length);
    },
  );

  it('shows 50 at a time', async () => {
    const many = Array.from({ length: 130 }, (_, index) => ({ ...sampleOf('single'), id: `AA-01-${300 + index}` }));
    const other = { ...smallPack(), head: { ...smallPack().head, id: 'many' }, questions: many, families: [] };
    await packsService({ db: app.db, enrolAll }).load(other);
    const seen: string[] = [];
    let address: string | undefined = '/bank?text=alphabet';
    for (let page = 0; address !== undefined && page < 5; page += 1) {
      const shown: Shown = await tutor.get(address);
      seen.push(...codes(shown));
      address = shown.html
        .querySelectorAll('nav.turn a')
        .find((link) => link.text === 'Later ones')
        ?.getAttribute('href')
        ?.replaceAll('&amp;', '&');
    }
    expect(seen).toEqual(many.map(({ id }) => id));
  });
});

describe('a question of the bank', () => {
  it.each(['single', ...kinds] as const)('of the kind %s is shown as asked, with its key, why, caution and sources', async (kind) => {
    const question = kind === 'single' ? small.questions[0] : sampleOf(kind);
    const page = await open(question?.id ?? '');
    expect(page.html.querySelector('h1')?.text.trim()).toBe(question?.stem);
    expect(page.words).toContain(question?.explanation ?? '?');
    const { sources, cautions } = small;
    expect(page.words).toContain(sources[0]?.title ?? '?');
    expect(page.words).toContain(cautions.find(({ id }) => id === question?.caution)?.text ?? '?');
    const key = page.html.querySelectorAll('main section').find((section) => section.querySelector('h2')?.text === 'The key');
    expect(key?.text.replace(/\s+/g, ' ')).toContain(
      {
        single: `Key of ${question?.id ?? ''}.`,
        several: 'A and C are true.',
        order: 'The right order is',
        pairs: 'Voltage: volt',
        place: 'on the right',
      }[kind],
    );
  });

  it('of fresh numbers shows the numbers of a draw, others on demand, and the wrong answers that the family knows', async () => {
    const page = await open('nf-twice');
    const stem = page.html.querySelector('h1')?.text ?? '';
    const [, current] = /takes (\d+)/.exec(stem) ?? [];
    expect(page.words).toContain(`The answer is ${230 * Number(current)} W.`);
    expect(page.words).toContain('Used 120 V. Use the voltage that is printed.');
    const again =
      page.html
        .querySelectorAll('a')
        .find((link) => link.text === 'Other numbers')
        ?.getAttribute('href') ?? '';
    const seen = new Set([stem]);
    let address = again.replaceAll('&amp;', '&');
    for (let turn = 0; turn < 4; turn += 1) {
      const next = await tutor.get(address);
      seen.add(next.html.querySelector('h1')?.text ?? '');
      address = address.replace(/seed=\d+/, `seed=${turn + 3}`);
    }
    expect(seen.size).toBeGreaterThan(1);
  });

  it('shows an old revision with its own words, and says which is asked now', async () => {
    const changed = sampleOf('several');
    const later = { ...changed, revision: 2, stem: 'Which of these can be halved evenly?', sameSince: 1 };
    const questions = pack.questions.map((question) => (question.id === changed.id ? later : question));
    const loaded = await packsService({ db: app.db, enrolAll }).load({ ...pack, head: { ...pack.head, version: '2.0.0' }, questions });
    expect(loaded.state).not.toBe('refused');
    const now = await open(changed.id);
    expect(now.html.querySelector('h1')?.text.trim()).toBe(later.stem);
    expect(now.words).toContain('the same question as revision 1, in other words');
    const before = await open(changed.id, '?revision=1');
    expect(before.html.querySelector('h1')?.text.trim()).toBe(changed.stem);
    expect(before.words).toContain('This is revision 1. Now revision 2 is asked.');
    expect((await open(changed.id, '?revision=3')).status).toBe(404);
  });

  it('that is retired is found on demand alone, and says so', async () => {
    await app.rows("UPDATE question SET retired = true WHERE code = 'AA-01-103'");
    expect(codes(await find({ text: 'AA-01-103' }))).toEqual([]);
    const found = await find({ text: 'AA-01-103', retired: 'yes' });
    expect(codes(found)).toEqual(['AA-01-103']);
    const page = await tutor.get(found.html.querySelector('.bank li a')?.getAttribute('href') ?? '');
    expect(page.words).toContain('Retired: it is asked no more');
  });
});
