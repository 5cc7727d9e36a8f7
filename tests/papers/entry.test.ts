import { randomUUID } from 'node:crypto';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Person } from '../../src/accounts/index.js';
import type { Pack } from '../../src/core/pack.js';
import { outlookService } from '../../src/outlook/index.js';
import { papersService, type PapersService } from '../../src/papers/index.js';
import { questionsService } from '../../src/questions/index.js';
import { replayAll } from '../../src/study/index.js';
import { answer, rightFields } from '../support/answering.js';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { smallPack } from '../support/small-pack.js';
import { password, staffOf } from '../support/staff.js';

/** A class sits a paper on paper; its tutor types in the letters, or sends them as a table. */

const blueprint = { id: 'eight', title: 'Eight questions', questions: 8, passMark: 5, minutes: 10, shares: { AA: 3, BB: 3, CC: 2 } };

let app: TestApp;
let tutor: Visitor;
let stranger: Visitor;
let papers: PapersService;
let tessa: Person;

beforeAll(async () => {
  app = await testApp({ pack: packOfEight(), start: '2026-11-25T23:40:00Z' });
  await app.rows('UPDATE pack SET blueprints = $1', [JSON.stringify([blueprint])]);
  const staff = await staffOf(app);
  tutor = staff.tutor;
  stranger = await anotherTutor(staff.administrator);
  const { db, clock } = app;
  const questions = questionsService({ db, clock });
  papers = papersService({ db, clock, questions, outlook: outlookService({ db, clock, questions }) });
  const [person] = await app.rows<Person>(
    `SELECT id, role, region, time_zone AS "timeZone", display_name AS "displayName" FROM person WHERE display_name = 'Tessa'`,
  );
  tessa = person as Person;
});
afterAll(() => app.close());

/** The small pack with a third mistake in its number family, so that there are four values to choose from. */
function packOfEight(): Pack {
  const pack = smallPack();
  const third = { name: 'doubled', label: 'Doubled it', expr: '2 * V * I', direction: 'wrong' as const, tell: 'Once is enough.' };
  const families = pack.families.map((family) =>
    family.id === 'nf-twice' ? { ...family, tellTales: [...family.tellTales, third] } : family,
  );
  return { ...pack, families };
}

async function anotherTutor(administrator: Visitor): Promise<Visitor> {
  const other = app.visitor('10.0.0.3');
  const invited = await administrator.submit(await administrator.get('/staff'), '/staff', { name: 'Ulla', role: 'tutor' });
  const invitation = new URL(invited.html.querySelector('.plate.must a')?.getAttribute('href') ?? '').pathname;
  await other.submit(await other.get(invitation), invitation, { password });
  return other;
}

interface ClassPaper {
  paperId: string;
  classId: number;
  here: string;
  versions: Version[];
}

/** What a version asks, as it is printed: nothing that tells the key. */
type Version = { stem: string; options: Map<string, string> }[];

/** A class of its own with a paper in so many versions. */
async function classPaper(versions: number, open = false): Promise<ClassPaper> {
  const [made] = await app.rows<{ id: number }>(
    `WITH made AS (INSERT INTO study_class (name) VALUES ($1) RETURNING id)
     INSERT INTO class_tutor (class_id, person_id) SELECT made.id, $2 FROM made RETURNING class_id AS id`,
    [`Class ${randomUUID()}`, tessa.id],
  );
  const classId = made?.id ?? 0;
  const paperId = randomUUID();
  const now = app.clock.now();
  const window = open ? { opensAt: now, closesAt: new Date(now.getTime() + 3_600_000) } : { opensAt: null, closesAt: null };
  const wish = { paperId, classId, paper: 'small/eight', title: 'Mock paper 7', region: 'uk' as const, versions, ...window };
  expect(await papers.setting.set(tessa, wish)).toEqual({});
  const printed = await papers.setting.versions(
    tessa,
    paperId,
    Array.from({ length: versions }, (_, index) => index + 1),
  );
  return {
    paperId,
    classId,
    here: `/class-papers/${paperId}`,
    versions: printed.versions.map(({ items }) =>
      items.map(({ stem, task }) => {
        const texts = task.kind === 'choice' ? task.options.map(({ text }) => text) : task.places.map(({ text }) => text);
        return { stem, options: new Map(texts.map((text, index) => ['ABCDEF'[index] ?? '', text])) };
      }),
    ),
  };
}

async function join(paper: ClassPaper, name: string): Promise<Visitor & { id: number }> {
  const visitor = await app.candidate(name);
  const [row] = await app.rows<{ id: number }>(
    'INSERT INTO class_member (class_id, person_id) SELECT $1, max(id) FROM person RETURNING person_id AS id',
    [paper.classId],
  );
  return Object.assign(visitor, { id: row?.id ?? 0 });
}

/** The right letter by the small pack's own rules, as somebody with the printed sheet before them would find it. */
function keyOf({ stem, options }: Version[number]): string {
  const figure = (text: string): number => Number(text.replace(/[\s,]/g, '').match(/[\d.]+/)?.[0]);
  const plain = stem.replace(/\s+/g, ' ');
  const [current, voltage] = [Number(/takes (\d+) A/.exec(plain)?.[1]), Number(/(\d+) V/.exec(plain)?.[1])];
  const fuse = [3, 5, 10, 13].find((rating) => rating >= current);
  const right = ([, text]: [string, string]): boolean => {
    if (stem.startsWith('Stem of')) return text.startsWith('Key of');
    return figure(text) === (stem.includes('heater') ? current * voltage : fuse);
  };
  const found = [...options].filter(right);
  if (found.length !== 1) throw new Error(`${found.length} keys: ${stem} ${[...options.values()].join(' | ')}`);
  return found[0]?.[0] ?? '';
}

const wrongOf = (question: Version[number]): string => [...options(question)].find((letter) => letter !== keyOf(question)) ?? '';
const options = (question: Version[number]): Iterable<string> => question.options.keys();

/** Letters of a sheet, right, wrong and left out by a pattern, and how many of them are right. */
function filled(version: Version, seed: number): { letters: string; right: number } {
  let state = seed;
  let right = 0;
  const letters = version.map((question) => {
    state = (state * 1103515245 + 12345) % 2147483648;
    const what = Math.floor(state / 65536) % 8;
    if (what === 0) return '-';
    if (what < 3) return wrongOf(question);
    right += 1;
    return keyOf(question);
  });
  return { letters: letters.join(''), right };
}

const allRight = (version: Version | undefined): string => (version ?? []).map(keyOf).join('');

async function type(paper: ClassPaper, fields: Record<string, string>): Promise<Shown> {
  return await tutor.submit(await tutor.get(`${paper.here}/enter`), `${paper.here}/enter`, fields);
}

/** Sends a sheet and follows to the page after it. */
async function enter(paper: ClassPaper, fields: Record<string, string>): Promise<Shown> {
  const sent = await type(paper, fields);
  expect([sent.status, sent.words]).toEqual([303, '']);
  return await tutor.get(sent.location ?? '');
}

const sendTable = async (paper: ClassPaper, text: string, fields: Record<string, string> = {}): Promise<Shown> =>
  tutor.submit(await tutor.get(`${paper.here}/csv`), `${paper.here}/csv`, { text, ...fields });

/** What the report says of rows: which one, and what of it. */
const findings = (page: Shown): string[][] =>
  page.html.querySelectorAll('.findings li').map((item) => {
    const place = item.querySelector('b')?.text ?? '';
    return [place, item.text.slice(place.length).trim()];
  });

interface Row {
  id: string;
  person_id: number | null;
  guest_name: string | null;
  version: number;
  way: string;
  right: number;
  passed: boolean;
  extra_time: number;
  chance_low: number | null;
  started_at: Date | null;
}
const sittings = (paper: ClassPaper): Promise<Row[]> =>
  app.rows<Row>('SELECT * FROM sitting WHERE paper_id = $1 ORDER BY version, guest_name', [paper.paperId]);
const tokens = (paper: ClassPaper): Promise<{ token: string; certainty: string; question_id: number; position: number }[]> =>
  app.rows(
    `SELECT a.*, sa.position FROM answer a JOIN sitting_answer sa ON sa.token = a.token JOIN sitting s ON s.id = sa.sitting_id WHERE s.paper_id = $1
     ORDER BY a.question_id, a.token`,
    [paper.paperId],
  );
const differences = async (): Promise<unknown[]> => (await replayAll(app.db, () => undefined)).differences;

describe('a class of twelve with twelve versions', () => {
  it('is marked from typed letters as by hand; members’ memories learn once; names without an account are kept with the mark', async () => {
    const paper = await classPaper(12);
    const names = ['Perpetua Moss', 'Ivo Crackthorn', 'Odo', 'Tansy', 'Vane', 'Wilf', 'Zoë'];
    const members: (Visitor & { id: number })[] = [];
    for (const name of names) members.push(await join(paper, name));
    await app.rows('UPDATE class_member SET extra_time = 25 WHERE person_id = $1', [members[1]?.id]);
    // One has met everything before midnight, so that a chance can be told.
    const round = (await members[0]?.round('20')) ?? '';
    for (let page = await tutor.get('/'), one = members[0] as Visitor; (page = await one.get(round)).status === 200;)
      await answer(one, page, rightFields(page));
    app.clock.forward(30 * 60_000);
    const before = await app.rows<{ count: number }>('SELECT count(*)::int FROM answer');

    const marks: { name: string; right: number; blanks: number }[] = [];
    for (const [index, version] of paper.versions.entries()) {
      const { letters, right } = filled(version, index + 1);
      const name = names[index] ?? `Guest ${index}`;
      const who = index < names.length ? { candidate: String(members[index]?.id) } : { candidate: 'guest', name };
      // In small letters and in groups, as people type.
      const typed = index % 2 === 0 ? letters : `${letters.slice(0, 5)} ${letters.slice(5)}`.toLowerCase();
      const page = await enter(paper, { ...who, version: String(index + 1), letters: typed });
      expect(page.html.querySelector('#said')?.text).toContain(`${name}, version ${index + 1}: ${right} of 8 saved.`);
      marks.push({ name, right, blanks: [...letters].filter((letter) => letter === '-').length });
    }
    expect(new Set(marks.map(({ right }) => right)).size).toBeGreaterThan(3);

    const rows = await sittings(paper);
    expect(rows.map(({ right, passed, version, way }) => ({ right, passed, version, way }))).toEqual(
      marks.map(({ right }, index) => ({ right, passed: right >= 5, version: index + 1, way: 'sheet' })),
    );
    expect(rows.map(({ extra_time }) => extra_time)).toEqual([0, 25, ...Array.from({ length: 10 }, () => 0)]);
    expect(rows.map(({ chance_low }) => chance_low === null)).toEqual([false, ...Array.from({ length: 11 }, () => true)]);
    expect(rows.slice(7).map(({ guest_name, person_id }) => [guest_name, person_id])).toEqual(
      marks.slice(7).map(({ name }) => [name, null]),
    );
    const learnt = await tokens(paper);
    expect(learnt).toHaveLength(marks.slice(0, 7).reduce((sum, { blanks }) => sum + 8 - blanks, 0));
    expect(new Set(learnt.map(({ certainty }) => certainty))).toEqual(new Set(['unsaid']));
    expect((await app.rows<{ count: number }>('SELECT count(*)::int FROM answer'))[0]?.count).toBe((before[0]?.count ?? 0) + learnt.length);
    expect(await differences()).toEqual([]);

    const page = await tutor.get(`${paper.here}/enter`);
    expect(page.html.querySelectorAll('tbody tr')).toHaveLength(12);
    const links = page.html.querySelectorAll('tbody a').map(({ text }) => text);
    expect(['Correct', 'Remove'].map((word) => links.filter((link) => link === word).length)).toEqual([12, 5]);
    expect(page.words).toContain('Every member has a result.');
    expect(page.html.querySelectorAll('#candidate option').map((option) => option.getAttribute('value'))).toEqual(['', 'guest']);

    // Out as a file, read by somebody else's reader.
    const file = await tutor.get(`${paper.here}/results.csv`);
    expect(file.headers['content-type']).toBe('text/csv; charset=utf-8');
    expect(file.headers['content-disposition']).toBe('attachment; filename="results-Mock-paper-7.csv"');
    expect(file.text.split('\r\n')[0]).toBe('candidate,version,right,passed,1,2,3,4,5,6,7,8');
    const records = parse(file.text, { columns: true }) as Record<string, string>[];
    const byName = new Map(records.map((record) => [record['candidate'], record]));
    for (const [index, { name, right }] of marks.entries()) {
      const record = byName.get(name);
      expect([record?.['version'], record?.['right'], record?.['passed']]).toEqual([
        String(index + 1),
        String(right),
        right >= 5 ? 'yes' : 'no',
      ]);
      const { letters } = filled(paper.versions[index] ?? [], index + 1);
      expect([1, 2, 3, 4, 5, 6, 7, 8].map((number) => record?.[number] || '-').join('')).toBe(letters);
    }
  });
});

describe('the form of a sheet', () => {
  let paper: ClassPaper;
  let odo: Visitor & { id: number };
  beforeAll(async () => {
    paper = await classPaper(3);
    odo = await join(paper, 'Odo');
    await join(paper, 'Perpetua Moss');
  });

  it('tells how many letters each question has and not which is the key; the version is left to be typed', async () => {
    const page = await tutor.get(`${paper.here}/enter`);
    expect(page.html.querySelector('#letters')?.getAttribute('data-letters')).toBe(
      paper.versions.map((version) => version.map((question) => question.options.size).join('')).join(' '),
    );
    expect(page.text).not.toContain('Key of');
    expect(page.html.querySelectorAll('[autofocus]').map((element) => element.getAttribute('id'))).toEqual(['candidate']);
    expect(page.html.querySelector('#version')?.getAttribute('value')).toBe('');
    const next = await enter(paper, { candidate: 'guest', name: 'First', version: '3', letters: allRight(paper.versions[2]) });
    expect(next.html.querySelector('#version')?.getAttribute('value')).toBe('');
    expect(next.html.querySelectorAll('[autofocus]').map((element) => element.getAttribute('id'))).toEqual(['candidate']);
  });

  it.each([
    ['a letter that there is not', { letters: 'ABCDABCF' }, 'letters', /has no F \(A to D\)/],
    ['too few letters', { letters: 'ABC' }, 'letters', /^3 answers for 8 questions: 5 missing\. Type - for a blank\.$/],
    ['too many letters', { letters: 'ABCDABCDA' }, 'letters', /1 too many/],
    ['a sign that is no letter', { letters: 'ABCDABC?' }, 'letters', /“\?” is no letter/],
    ['an unknown version', { version: '4' }, 'version', /^There is no version “4”: the paper has versions 1 to 3\.$/],
    ['no version', { version: '' }, 'version', /^The version is missing/],
    ['nobody', { candidate: '' }, 'candidate', /^Choose whose sheet it is\.$/],
    ['somebody who is not of this class', { candidate: '1' }, 'candidate', /^Choose whose sheet it is\.$/],
    ['a name left out', { candidate: 'guest', name: ' ' }, 'name', /^The name is missing\.$/],
    ['a member’s name', { candidate: 'guest', name: 'perpetua  moss' }, 'name', /is a member of the class/],
    ['a name that only the case parts from another', { candidate: 'guest', name: 'FIRST' }, 'name', /^First is already entered: 8 of 8\.$/],
  ])('comes back with everything and the reason for %s', async (_what, wrong, field, why) => {
    const fields = { candidate: String(odo.id), name: '', version: '1', letters: 'abcd-bcd', ...wrong };
    const page = await type(paper, fields);
    expect(page.status).toBe(422);
    expect(page.html.querySelector(`#${field}-why`)?.text).toMatch(why);
    expect(page.html.querySelector('.plate.no a')?.getAttribute('href')).toBe(`#${field}`);
    for (const name of ['name', 'version', 'letters'] as const)
      expect(page.html.querySelector(`#${name}`)?.getAttribute('value')).toBe(fields[name]);
    expect(page.html.querySelector('#candidate option[selected]')?.getAttribute('value') ?? '').toBe(
      fields.candidate === '1' ? '' : fields.candidate,
    );
    expect((await sittings(paper)).filter(({ person_id }) => person_id === odo.id)).toEqual([]);
  });

  it('sent twice makes one, and says that it is entered already, with its mark', async () => {
    const form = await tutor.get(`${paper.here}/enter`);
    const fields = { candidate: String(odo.id), version: '2', letters: allRight(paper.versions[1]) };
    const action = `${paper.here}/enter`;
    const answers = await Promise.all([tutor.submit(form, action, fields), tutor.submit(form, action, fields)]);
    const pages = await Promise.all(answers.map(({ location }) => tutor.get(location ?? '')));
    const said = pages.map(({ html }) => html.querySelector('#said')?.text.replace(/\s+/g, ' ') ?? '').sort();
    expect(said).toEqual(
      [
        'Odo, version 2: 8 of 8 saved. Passed.',
        'Odo, version 2: already entered, 8 of 8. The same sheet was sent twice; it counts once.',
      ].sort(),
    );
    const other = await tutor.submit(form, action, { ...fields, letters: '--------' });
    expect(other.status).toBe(422);
    expect(other.html.querySelector('#candidate-why')?.text).toBe(
      'Odo is already entered: version 2, 8 of 8. To change that sheet, choose Correct in the table below.',
    );
    expect(other.html.querySelector('#letters')?.getAttribute('value')).toBe('--------');
    const guests = await Promise.all([1, 2].map(() => tutor.submit(form, action, { ...fields, candidate: 'guest', name: 'Sunniva' })));
    expect(guests.map(({ status }) => status)).toEqual([303, 303]);
    const rows = await sittings(paper);
    expect(rows.filter(({ person_id, guest_name }) => person_id === odo.id || guest_name === 'Sunniva')).toHaveLength(2);
    expect(await tokens(paper)).toHaveLength(8);
    expect(await differences()).toEqual([]);
  });

  it('corrects letters and version: the mark is new, the memory and the record of answers stay', async () => {
    const [first] = (await sittings(paper)).filter(({ person_id }) => person_id === odo.id);
    const memory = await app.rows('SELECT * FROM memory WHERE person_id = $1 ORDER BY question_id', [odo.id]);
    const learnt = await tokens(paper);
    const edit = `${paper.here}/enter?correct=${first?.id}`;
    const page = await tutor.get(edit);
    expect(page.html.querySelector('#letters')?.getAttribute('value')).toBe(allRight(paper.versions[1]));
    expect(page.html.querySelectorAll('[autofocus]').map((element) => element.getAttribute('id'))).toEqual(['letters']);
    const letters = `-${allRight(paper.versions[2]).slice(1)}`;
    const sent = await tutor.submit(page, `${paper.here}/enter`, { version: '3', letters });
    expect((await tutor.get(sent.location ?? '')).html.querySelector('#said')?.text).toContain('Odo, version 3: 7 of 8 saved.');
    const [now] = (await sittings(paper)).filter(({ id }) => id === first?.id);
    expect([now?.right, now?.version, now?.passed]).toEqual([7, 3, true]);
    // Each line of the record stays with its question, wherever the other version has it.
    const moved = await tokens(paper);
    expect(moved.map(({ token, question_id }) => [token, question_id])).toEqual(
      learnt.map(({ token, question_id }) => [token, question_id]),
    );
    const items = await app.rows<{ position: number; question_id: number }>(
      'SELECT position, question_id FROM paper_item WHERE paper_id = $1 AND version = 3',
      [paper.paperId],
    );
    for (const { position, question_id } of moved) expect(items).toContainEqual({ position, question_id });
    expect(await app.rows('SELECT * FROM memory WHERE person_id = $1 ORDER BY question_id', [odo.id])).toEqual(memory);
    expect(await differences()).toEqual([]);
    const wrong = await tutor.submit(await tutor.get(edit), `${paper.here}/enter`, { letters: 'ABC' });
    expect([wrong.status, wrong.html.querySelector('h1')?.text]).toEqual([422, 'Correct Odo’s sheet']);
  });

  it('doubts a version on which the letters make far fewer right than on another, and takes it when it is saved once more', async () => {
    // The right letters of version 2, typed by mistake for one on which most of them are wrong.
    const letters = allRight(paper.versions[1]);
    const rightOn = (version: Version | undefined): number =>
      (version ?? []).filter((question, index) => keyOf(question) === letters[index]).length;
    const mistaken = rightOn(paper.versions[0]) < rightOn(paper.versions[2]) ? 1 : 3;
    const own = rightOn(paper.versions[mistaken - 1]);
    const fields = { candidate: 'guest', name: 'Muddled', version: String(mistaken), letters };
    const page = await type(paper, fields);
    expect(page.status).toBe(422);
    expect(page.words).toContain(`These letters make ${own} right on version ${mistaken}, and 8 on version 2.`);
    expect(page.html.querySelector('#letters')?.getAttribute('value')).toBe(fields.letters);
    const saved = await tutor.submit(page, `${paper.here}/enter`, { candidate: 'guest' });
    expect(saved.status).toBe(303);
    expect((await tutor.get(saved.location ?? '')).words).toContain(`Muddled, version ${mistaken}: ${own} of 8 saved.`);
  });

  it('removes a name without an account after a second look, and nobody else', async () => {
    const page = await tutor.get(`${paper.here}/enter`);
    const link = page.html.querySelectorAll('tbody a').find((one) => one.getAttribute('aria-label') === 'Remove First’s sheet');
    const [first] = (await sittings(paper)).filter(({ guest_name }) => guest_name === 'First');
    const remove = `${paper.here}/enter/${first?.id}/remove`;
    const removed = await tutor.submit(await tutor.get(link?.getAttribute('href')?.split('#')[0] ?? ''), remove);
    expect(removed.location).toBe(`${paper.here}/enter`);
    expect((await sittings(paper)).map(({ guest_name }) => guest_name)).not.toContain('First');
    const [odos] = (await sittings(paper)).filter(({ person_id }) => person_id === odo.id);
    const own = await tutor.get(`${paper.here}/enter?correct=${odos?.id}`);
    expect(own.html.querySelector('#remove')).toBeNull();
    await tutor.send('POST', `${paper.here}/enter/${odos?.id}/remove`, {
      _csrf: own.html.querySelector('[name=_csrf]')?.getAttribute('value') ?? '',
    });
    expect((await sittings(paper)).map(({ id }) => id)).toContain(odos?.id);
  });
});

describe('a member who is at the screen', () => {
  it('keeps that sitting once it is begun; one that was only taken up gives way', async () => {
    const paper = await classPaper(2, true);
    const [odo, tansy] = [await join(paper, 'Odo'), await join(paper, 'Tansy')];
    for (const candidate of [odo, tansy]) {
      const person = { ...tessa, id: candidate.id, role: 'candidate' as const };
      const id = await papers.sittings.takeUp(person, paper.paperId);
      if (candidate === odo) await papers.sittings.begin(person, id);
    }
    const fields = { version: '1', letters: allRight(paper.versions[0]) };
    const refused = await type(paper, { ...fields, candidate: String(odo.id) });
    expect(refused.status).toBe(422);
    expect(refused.html.querySelector('#candidate-why')?.text).toContain('Odo has begun it on the screen');
    await enter(paper, { ...fields, candidate: String(tansy.id) });
    expect((await sittings(paper)).map(({ person_id, way, right }) => [person_id, way, right])).toEqual([
      [odo.id, 'screen', null],
      [tansy.id, 'sheet', 8],
    ]);
    const table = await sendTable(paper, `candidate,version,answers\nOdo,1,${fields.letters}`);
    expect(findings(table)).toEqual([['Row 2, Odo', 'This candidate has begun it on the screen.']]);
    // When its time is over it is handed in with what was saved, and can be neither corrected nor entered.
    app.clock.forward(2 * 3_600_000);
    expect((await tutor.get(`${paper.here}/enter`)).html.querySelectorAll('#candidate option')).toHaveLength(2);
    const [own] = (await sittings(paper)).filter(({ person_id }) => person_id === odo.id);
    expect((await tutor.get(`${paper.here}/enter?correct=${own?.id}`)).status).toBe(404);
  });
});

describe('a table of results', () => {
  let paper: ClassPaper;
  const letters: string[] = [];
  beforeAll(async () => {
    paper = await classPaper(2);
    for (const name of ['Perpetua Moss', 'Ivo Crackthorn', 'Odo', 'Odo', 'Zoë']) await join(paper, name);
    letters.push(allRight(paper.versions[0]), allRight(paper.versions[1]));
  });
  const header = 'candidate,version,answers';
  const names = async (): Promise<string[]> =>
    (
      (await app.rows(
        'SELECT coalesce(p.display_name, s.guest_name) AS name FROM sitting s LEFT JOIN person p ON p.id = s.person_id WHERE paper_id = $1 ORDER BY 1',
        [paper.paperId],
      )) as { name: string }[]
    ).map(({ name }) => name);

  it.each([
    ['nothing', '', 'There is no row.'],
    ['no header', 'Odo,1,ABCD', 'The header has a column “odo”.'],
    ['a quotation mark left open', `${header}\n"Odo,1,ABCD`, 'A quotation mark is opened and never closed.'],
    [
      'too many rows',
      `${header}\n${Array.from({ length: 301 }, (_, index) => `Guest ${index},1,ABCDABCD`).join('\n')}`,
      'There are more than 300 rows.',
    ],
    ['too many columns', `${header}\n${','.repeat(260)}`, 'A row has 261 columns; 250 are the most.'],
    ['too much', `${header}\n${'x'.repeat(300_000)}`, 'This is too much: a table of results has 256 kB at most.'],
  ])('of %s is refused as a whole, with the reason', async (_what, text, why) => {
    const page = await sendTable(paper, text);
    expect(page.status).toBe(422);
    expect(page.html.querySelector('#text-why')?.text).toContain(why);
    expect(await names()).toEqual([]);
  });

  it('with faults is told row by row, and nothing is imported until the clean rows are confirmed', async () => {
    const text = [
      header,
      `perpetua moss,1,${letters[0]}`,
      `Sunniva,2,${letters[1]}`,
      `Ivo Crackthorn,3,${letters[0]}`,
      'Zoë,1,ABCF',
      `Odo,1,${letters[0]}`,
      `Twice,1,${letters[0]}`,
      `Twice,2,${letters[1]}`,
      '',
      `=cmd|'/c calc'!A0,1,${letters[0]?.slice(0, -1)}-`,
    ].join('\r\n');
    const page = await sendTable(paper, text);
    expect(page.status).toBe(422);
    expect(findings(page)).toEqual([
      ['Row 4, Ivo Crackthorn', 'There is no version “3”: the paper has versions 1 to 2.'],
      ['Row 5, Zoë', '4 answers for 8 questions: 4 missing. Type - for a blank.'],
      ['Row 6, Odo', '2 members have this name. Enter their sheets one by one, and choose from the list.'],
      ['Row 7, Twice', 'Row 8 has the same candidate.'],
      ['Row 8, Twice', 'Row 7 has the same candidate.'],
    ]);
    expect(page.words).toContain('5 rows have something wrong. 3 rows of 8 can be imported.');
    expect(page.words).toContain("Without an account: Sunniva, =cmd|'/c calc'!A0.");
    expect(page.html.querySelector('#text')?.text).toBe(text);
    expect(await names()).toEqual([]);

    // Another number of clean rows than was shown is not what was confirmed.
    const changed = await tutor.submit(page, `${paper.here}/csv`, { text: `${header}\nSunniva,2,${letters[1]}\nOdo,1,x`, confirm: 'on' });
    expect([changed.status, await names()]).toEqual([422, []]);
    const done = await tutor.submit(page, `${paper.here}/csv`, { text, confirm: 'on' });
    expect(done.location).toBe(`${paper.here}/enter?added=3`);
    expect((await tutor.get(done.location ?? '')).words).toContain('3 sheets entered.');
    expect(await names()).toEqual(["=cmd|'/c calc'!A0", 'Perpetua Moss', 'Sunniva']);
    expect((await sittings(paper)).map(({ right }) => right).sort()).toEqual([7, 8, 8]);
    expect(await differences()).toEqual([]);

    const again = await tutor.submit(page, `${paper.here}/csv`, { text, confirm: 'on' });
    expect(again.status).toBe(422);
    expect(again.words).toContain('This candidate is already entered: 8 of 8.');
  });

  it('asks before a name is taken that only nearly is a member’s', async () => {
    const page = await sendTable(paper, `${header}\nIvo Crackthrn,1,${letters[0]}`);
    expect(page.status).toBe(422);
    expect(page.words).toContain('In doubt. No member has this name; Ivo Crackthorn has nearly the same.');
    expect(page.html.querySelector('button[name=confirm]')?.text).toBe('Import the 1 clean row');
  });

  it('that is clean is imported at once: a file, with semicolons, a mark at the start, and a column for each question', async () => {
    const columns = ['candidate', 'version', ...Array.from({ length: 8 }, (_, index) => String(index + 1))].join(';');
    const file = Buffer.from(`\ufeff${columns}\nZoë;2;${[...(letters[1] ?? '')].join(';').toLowerCase()}\n`);
    const sent = await tutor.sendFile(await tutor.get(`${paper.here}/csv`), `${paper.here}/csv`, 'results.csv', file);
    expect(sent.location).toBe(`${paper.here}/enter?added=1`);
    expect(await names()).toContain('Zoë');
  });

  it('goes out with formulas made harmless, and comes back as it was', async () => {
    const { text } = await tutor.get(`${paper.here}/results.csv`);
    expect(text).toContain("\r\n'=cmd|'/c calc'!A0,1,7,yes,");
    // Another class has the same letters on another paper; its marks are its own. Sent twice at once, it is entered once.
    const other = await classPaper(2);
    const form = await tutor.get(`${other.here}/csv`);
    const sent = await Promise.all([1, 2].map(() => tutor.submit(form, `${other.here}/csv`, { text })));
    expect(sent.filter(({ location }) => location === `${other.here}/enter?added=4`)).toHaveLength(1);
    expect(await sittings(other)).toHaveLength(4);
    expect((await tutor.get(`${other.here}/enter?added=0`)).words).toContain('The same table was sent twice; it counts once.');
    const withoutMarks = (file: string): string[][] =>
      (parse(file) as string[][]).map(([name = '', version = '', , , ...rest]) => [name, version, ...rest]);
    expect(withoutMarks((await tutor.get(`${other.here}/results.csv`)).text)).toEqual(withoutMarks(text));
  });
});

describe('whoever is not the tutor of the class', () => {
  it('finds no such paper, or is not let in', async () => {
    const paper = await classPaper(1);
    const odo = await join(paper, 'Odo');
    const token = (await stranger.get('/me')).html.querySelector('[name=_csrf]')?.getAttribute('value') ?? '';
    const posts = ['/enter', '/csv', `/enter/${randomUUID()}/remove`];
    for (const path of ['/enter', '/csv', '/results.csv']) {
      expect((await stranger.get(paper.here + path)).status, path).toBe(404);
      expect((await odo.get(paper.here + path)).status, path).toBe(403);
    }
    const sheet = { candidate: String(odo.id), version: '1', letters: allRight(paper.versions[0]) };
    const table = { text: `candidate,version,answers\nOdo,1,${sheet.letters}` };
    for (const path of posts) {
      expect((await stranger.send('POST', paper.here + path, { _csrf: token, ...sheet, ...table })).status, path).toBe(404);
      expect((await odo.send('POST', paper.here + path, { _csrf: token, ...sheet, ...table })).status, path).toBe(403);
    }
    expect(await sittings(paper)).toEqual([]);
  });
});
