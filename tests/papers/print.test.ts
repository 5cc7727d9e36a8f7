import { randomUUID } from 'node:crypto';
import { parse, type HTMLElement } from 'node-html-parser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Person } from '../../src/accounts/index.js';
import type { Pack } from '../../src/core/pack.js';
import { outlookService } from '../../src/outlook/index.js';
import { papersService } from '../../src/papers/index.js';
import { questionsService } from '../../src/questions/index.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { sampleOf, twoShapes } from '../support/kind-samples.js';
import { smallPack } from '../support/small-pack.js';
import { password, staffOf } from '../support/staff.js';

/** A tutor prints a paper of the small pack, to which a question about a drawing was added, and somebody marks what is printed by hand. */

const blueprint = { id: 'nine', title: 'Nine questions', questions: 9, passMark: 6, minutes: 10, shares: { AA: 4, BB: 3, CC: 2 } };
const versions = 4;

let app: TestApp;
let tutor: Visitor;
let stranger: Visitor;
let address: string;

beforeAll(async () => {
  app = await testApp({ pack: packWithMore() });
  await app.rows('UPDATE pack SET blueprints = $1', [JSON.stringify([blueprint])]);
  const staff = await staffOf(app);
  tutor = staff.tutor;
  stranger = await anotherTutor(staff.administrator);
  const [made] = await app.rows<{ id: number }>(`WITH made AS (INSERT INTO study_class (name) VALUES ('Thursday beginners') RETURNING id)
    INSERT INTO class_tutor (class_id, person_id) SELECT made.id, person.id FROM made, person WHERE display_name = 'Tessa' RETURNING class_id AS id`);
  address = `/class-papers/${await setPaper(made?.id ?? 0)}/print`;
});
afterAll(() => app.close());

/** The small pack with a question about a drawing, and with a third mistake in its number family, so that there are four values to choose from. */
function packWithMore(): Pack {
  const pack = smallPack();
  const third = { name: 'doubled', label: 'Doubled it', expr: '2 * V * I', direction: 'wrong' as const, tell: 'Once is enough.' };
  const families = pack.families.map((family) =>
    family.id === 'nf-twice' ? { ...family, tellTales: [...family.tellTales, third] } : family,
  );
  return { ...pack, families, questions: [...pack.questions, sampleOf('place')], drawings: [twoShapes] };
}

async function anotherTutor(administrator: Visitor): Promise<Visitor> {
  const other = app.visitor('10.0.0.3');
  const invited = await administrator.submit(await administrator.get('/staff'), '/staff', { name: 'Ulla', role: 'tutor' });
  const invitation = new URL(invited.html.querySelector('.plate.must a')?.getAttribute('href') ?? '').pathname;
  await other.submit(await other.get(invitation), invitation, { password });
  return other;
}

async function setPaper(classId: number): Promise<string> {
  const { db, clock } = app;
  const questions = questionsService({ db, clock });
  const papers = papersService({ db, clock, questions, outlook: outlookService({ db, clock, questions }) });
  const [person] = await app.rows<Person>(`SELECT id, role, region, time_zone AS "timeZone" FROM person WHERE display_name = 'Tessa'`);
  const wish = { classId, paper: 'small/nine', title: 'Mock paper <7>', region: 'uk' as const, versions };
  const paperId = randomUUID();
  const window = { opensAt: clock.now(), closesAt: new Date(clock.now().getTime() + 3_600_000) };
  expect(await papers.setting.set(person as Person, { ...wish, ...window, paperId })).toEqual({});
  return paperId;
}

const plain = (element: HTMLElement | null | undefined): string => (element?.text ?? '').replace(/\s+/g, ' ').trim();
const sheetsCalled = (page: Shown, name: RegExp): HTMLElement[] =>
  page.html.querySelectorAll('.printed > section').filter((section) => name.test(section.getAttribute('aria-label') ?? ''));
const questionsOf = (paper: HTMLElement): HTMLElement[] => paper.querySelectorAll('.pq > li');
const stem = (question: HTMLElement): string => plain(question.querySelector('p'));

/** What is printed beside each letter. */
function optionsOf(question: HTMLElement): Map<string, string> {
  return new Map(
    question.querySelectorAll('.po > li').map((option) => [plain(option.querySelector('b')), plain(option.querySelector('span'))]),
  );
}

const letterWith = (question: HTMLElement, holds: (text: string) => boolean): string =>
  [...optionsOf(question)]
    .filter(([, text]) => holds(text))
    .map(([letter]) => letter)
    .join(' and ');

/** The right letter, found by the small pack's own rules from nothing but the print. */
function markedByHand(question: HTMLElement): string {
  const asked = stem(question);
  if (asked === 'Where is the round one?') return letterWith(question, (text) => text === 'on the right');
  const [current, voltage] = [Number(/takes (\d+) A/.exec(asked)?.[1]), Number(/(\d+) V/.exec(asked)?.[1])];
  if (asked.startsWith('A heater')) return letterWith(question, (text) => text === `${current * voltage} W`);
  if (asked.startsWith('A load')) {
    const fuse = [3, 5, 10, 13].find((size) => size >= current);
    return letterWith(question, (text) => text === `${fuse} A`);
  }
  return letterWith(question, (text) => text.startsWith('Key of'));
}

/** By version, the letters of the printed tables. */
function keysOf(page: Shown): string[][] {
  return page.html
    .querySelectorAll('.key-tables table')
    .map((table) => table.querySelectorAll('tbody tr').map((row) => plain(row.querySelector('td'))));
}

describe('the papers', () => {
  it('ask the same questions in every version, each in another order, numbered from 1', async () => {
    const papers = sheetsCalled(await tutor.get(address), /questions$/);
    expect(papers.map((paper) => plain(paper.querySelector('.pp-version')))).toEqual(['Version 1', 'Version 2', 'Version 3', 'Version 4']);
    const orders = papers.map((paper) => questionsOf(paper).map((question) => stem(question).replace(/\d+ A/, '… A')));
    for (const order of orders) expect([...order].sort()).toEqual([...(orders[0] ?? [])].sort());
    expect(new Set(orders[0]).size).toBe(9);
    expect(new Set(orders.map(String)).size).toBe(versions);
    for (const paper of papers)
      expect(questionsOf(paper).map((question) => plain(question.querySelector('.pq-number')))).toEqual([...'123456789']);
  });

  it('say what they are, the rules and whose questions these are, and end with a word', async () => {
    const page = await tutor.get(address);
    for (const paper of sheetsCalled(page, /questions$/)) {
      const words = plain(paper);
      expect(words).toContain('9 questions, 10 minutes, pass mark 6, UK 230 V');
      expect(plain(paper.querySelector('h2'))).toBe('Mock paper <7>');
      expect(paper.querySelectorAll('.pp-rules > li')).toHaveLength(4);
      expect(words).toContain('local codes; fixed wiring and earthing are for a competent electrician');
      expect(words).toMatch(/End of paper ?Questions from the pack Small pack 1\.0\.0, licence CC0-1\.0\.$/);
    }
  });

  it('print the drawing with the letters that stand in the list below it', async () => {
    const page = await tutor.get(address);
    const ids = page.html.querySelectorAll('[id]').map((element) => element.getAttribute('id'));
    expect(new Set(ids).size).toBe(ids.length);
    for (const paper of sheetsCalled(page, /questions$/)) {
      const question = questionsOf(paper).find((each) => stem(each) === 'Where is the round one?') as HTMLElement;
      const round = question.querySelectorAll('.mark').find((mark) => mark.querySelector('circle')?.getAttribute('cx') === '300');
      expect(plain(round)).toBe(markedByHand(question));
      expect(question.querySelectorAll('.mark').map(plain).sort()).toEqual(['A', 'B', 'C']);
    }
  });

  it('come with an answer sheet of the same version, which has just the boxes that each question has letters', async () => {
    const page = await tutor.get(address);
    const [papers, sheets] = [sheetsCalled(page, /questions$/), sheetsCalled(page, /answer sheet$/)];
    expect(sheets).toHaveLength(versions);
    for (const [index, sheet] of sheets.entries()) {
      expect(sheet.querySelectorAll('.blanks dt').map(plain)).toEqual(['Name', 'Date', 'Version', 'Marked by', 'Checked by', 'Mark']);
      expect(plain(sheet.querySelector('.pp-number'))).toBe(String(index + 1));
      expect(plain(sheet.querySelector('.of'))).toBe('of 9');
      const boxes = sheet.querySelectorAll('.boxes > li').map((row) => row.querySelectorAll('.bx').map(plain));
      expect(boxes).toEqual(questionsOf(papers[index] as HTMLElement).map((question) => [...optionsOf(question).keys()]));
    }
  });
});

describe('the marking key', () => {
  it('agrees for every version with what somebody finds who marks the print by hand', async () => {
    const papers = sheetsCalled(await tutor.get(address), /questions$/);
    const byHand = papers.map((paper) => questionsOf(paper).map(markedByHand));
    expect(byHand.flat().every((letter) => /^[A-D]$/.test(letter))).toBe(true);
    const page = await tutor.get(`${address}?what=key`);
    expect(keysOf(page)).toEqual(byHand);
    const together = page.html.querySelectorAll('.key-together tbody tr').map((row) => row.querySelectorAll('td').map(plain));
    expect(together).toEqual(byHand[0]?.map((_, index) => byHand.map((letters) => letters[index])));
    expect(page.words).toContain('For the tutor: keep apart from the papers.');
    expect(page.html.querySelectorAll('.pq, .boxes')).toHaveLength(0);
  });
});

describe('papers and answer sheets', () => {
  const allowed = new Set('class aria-label aria-hidden role viewBox d'.split(' '));

  it.each(['papers', 'sheets'])('tell the key nowhere, as %s', async (what) => {
    const keys = keysOf(await tutor.get(`${address}?what=key`));
    const { html, text } = await tutor.get(`${address}?what=${what}`);
    const whole = parse(text);
    expect(text).not.toContain('<!--');
    for (const word of ['reason', 'Explanation', 'correct', 'seed']) expect(text).not.toContain(word);
    const seeds = await app.rows<{ seed: number }>('SELECT seed FROM paper UNION SELECT seed FROM paper_item');
    expect(seeds.length).toBeGreaterThan(10);
    for (const { seed } of seeds) expect(text).not.toContain(String(seed));
    // Letters that stand by themselves, one after another, whatever stands between them; those of the options themselves left out.
    for (const list of html.querySelectorAll('.po, .boxes')) list.remove();
    const alone = [...html.text.matchAll(/(?<![A-Za-z])[A-F](?![A-Za-z])/g)].map(([letter]) => letter).join('');
    for (const key of keys) for (const found of [text, alone]) expect(found).not.toContain(key.join(''));
    // One option is written like another, but for its letter and its words.
    const shapes = whole
      .querySelectorAll('.po > li')
      .map((option) => option.outerHTML.replace(/>[^<]+/g, '>').replace('<span class="q"></span>', ''));
    expect([...new Set(shapes)]).toEqual(what === 'papers' ? ['<li><b></b><span></span></li>'] : []);
    const boxes = whole.querySelectorAll('.boxes .bx').map((box) => box.outerHTML.replace(/>[A-F]</, '><'));
    expect([...new Set(boxes)]).toEqual(['<i class="bx"></i>']);
    const outside = whole.querySelectorAll('.printed *').filter((element) => element.closest('.drawing') === null);
    expect(outside.flatMap(({ attributes }) => Object.keys(attributes)).filter((name) => !allowed.has(name))).toEqual([]);
  });

  it('have the key at no letter by rule', async () => {
    const keys = keysOf(await tutor.get(`${address}?what=key`));
    expect(new Set(keys.flat()).size).toBeGreaterThan(2);
  });
});

describe('what is printed', () => {
  it('is chosen in the form: answer sheets only, some versions, paper and size of print', async () => {
    const page = await tutor.get(`${address}?what=sheets&from=3&to=2&size=letter&large=on`);
    expect(page.html.querySelectorAll('.printed > section').map((sheet) => sheet.getAttribute('aria-label'))).toEqual([
      'Version 2, answer sheet',
      'Version 3, answer sheet',
    ]);
    expect(page.html.querySelector('.printed')?.getAttribute('class')).toBe('printed letter large');
    expect(page.html.querySelectorAll('select option[selected]').map((option) => option.getAttribute('value'))).toEqual([
      'sheets',
      '2',
      '3',
      'letter',
    ]);
    expect(page.text).toMatch(/<link rel="stylesheet" href="\/assets\/print-paper\.css\?v=/);
    const one = await tutor.get(`${address}?from=2&to=2`);
    expect(one.html.querySelector('.printed')?.getAttribute('class')).toBe('printed a4 one-set');
    expect(sheetsCalled(one, /^Version 2/)).toHaveLength(2);
    expect(one.html.querySelectorAll('.printed > section')).toHaveLength(2);
  });

  it.each(['what=all', 'from=0', 'to=5', 'from=1.5', 'from=', 'size=a5', 'large=yes', 'what=key&what=papers'])(
    'refuses %j',
    async (query) => {
      expect((await tutor.get(`${address}?${query}`)).status).toBe(400);
    },
  );

  it('is for the tutors of the class: nobody else finds it, and candidates are not let in', async () => {
    for (const query of ['', '?what=key', '?what=sheets']) {
      expect((await stranger.get(address + query)).status).toBe(404);
      expect((await (await app.candidate('Odo')).get(address + query)).status).toBe(403);
      expect((await app.visitor('10.0.0.9').get(address + query)).status).toBe(401);
    }
    expect((await tutor.get(`/class-papers/${randomUUID()}/print`)).status).toBe(404);
    expect((await tutor.get('/class-papers/nine/print')).status).toBe(404);
  });
});
