import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { testApp, type Shown, type TestApp, type Visitor } from '../support/app.js';
import { addClass, addPeople, personNamed, recordAnswers, widerPack, type AnswerGiven } from '../support/recorded-answers.js';
import { staffOf } from '../support/staff.js';

/** Whose answers a tutor sees, and what the pages say of few people and of many. */

let app: TestApp;
let tutor: Visitor;
let administrator: Visitor;
let tessa: number;
let alma: number;

beforeAll(async () => {
  app = await testApp({ pack: widerPack(15) });
  ({ tutor, administrator } = await staffOf(app));
  [tessa, alma] = [await personNamed(app, 'Tessa'), await personNamed(app, 'Alma')];
});
afterAll(() => app.close());
beforeEach(async () => {
  await app.rows('DELETE FROM query');
  await app.rows('DELETE FROM study_class');
  await app.rows("DELETE FROM person WHERE role = 'candidate'");
});

const code = 'AA-01-001';
const right = (person: number): AnswerGiven => ({ person, code, given: '0', right: true });
const wrong = (person: number): AnswerGiven => ({ person, code, given: '2', right: false });
const idOf = async (wanted: string): Promise<number> =>
  (await app.rows<{ id: number }>('SELECT id FROM question WHERE code = $1', [wanted]))[0]?.id ?? 0;
const page = async (visitor: Visitor, classId: number, of: string): Promise<Shown> =>
  await visitor.get(`/classes/${classId}/questions/${await idOf(code)}?of=${of}`);
/** "3 of 4 right at first sight", or nothing where the figures are not shown. */
const counts = (shown: Shown): string | null => /(\d+ of \d+) right at first sight/.exec(shown.words)?.[1] ?? null;

/** Tessa's class of three, and another tutor's class of so many; others are in no class. */
async function club(others: number, classless = 0): Promise<{ own: number; foreign: number; people: number[] }> {
  const people = await addPeople(app, 3 + others + classless);
  const own = await addClass(app, 'Own', [tessa], people.slice(0, 3));
  const foreign = await addClass(app, 'Foreign', [alma], people.slice(3, 3 + others));
  await recordAnswers(app, [...people.slice(0, 3).map(right), ...people.slice(3).map(wrong)]);
  return { own, foreign, people };
}

describe('scopes', () => {
  it('are the class, all classes and everybody', async () => {
    const { own } = await club(5, 6);
    expect(counts(await page(tutor, own, 'class'))).toBe('3 of 3');
    expect(counts(await page(tutor, own, 'club'))).toBe('3 of 8');
    expect(counts(await page(tutor, own, 'all'))).toBe('3 of 14');
  });

  it('read anything else as the class', async () => {
    const { own } = await club(5);
    expect(counts(await page(tutor, own, 'everything'))).toBe('3 of 3');
  });

  it('count somebody once who is in two classes', async () => {
    const { own, foreign, people } = await club(5);
    await app.rows('INSERT INTO class_member (class_id, person_id) VALUES ($1, $2)', [foreign, people[0]]);
    expect(counts(await page(tutor, own, 'club'))).toBe('3 of 8');
  });

  it('name nobody', async () => {
    const { own } = await club(5, 5);
    for (const of of ['class', 'club', 'all']) {
      expect((await page(tutor, own, of)).words).not.toMatch(/Person \d/);
      expect((await tutor.get(`/classes/${own}/questions?of=${of}`)).words).not.toMatch(/Person \d|Foreign/);
    }
  });
});

describe('people beyond the viewer’s own classes', () => {
  it.each([
    [1, false],
    [4, false],
    [5, true],
  ])('%i of another class: figures of the club are shown: %s', async (others, shown) => {
    const { own } = await club(others);
    expect(counts(await page(tutor, own, 'club'))).toBe(shown ? `3 of ${3 + others}` : null);
    const list = await tutor.get(`/classes/${own}/questions?of=club`);
    expect(list.words.includes('One question is left out here')).toBe(!shown);
    expect(list.words.includes(code)).toBe(shown);
  });

  it('are no hindrance where there are none', async () => {
    const { own } = await club(0);
    expect(counts(await page(tutor, own, 'club'))).toBe('3 of 3');
    expect(counts(await page(tutor, own, 'all'))).toBe('3 of 3');
  });

  it('who are in no class cannot be told by taking the club from everybody', async () => {
    const { own } = await club(6, 1);
    expect(counts(await page(tutor, own, 'club'))).toBe('3 of 9');
    expect(counts(await page(tutor, own, 'all'))).toBeNull();
  });

  it('of a second class of the same tutor are the viewer’s own', async () => {
    const { own, people } = await club(2);
    await addClass(app, 'Second', [tessa], people.slice(3));
    expect(counts(await page(tutor, own, 'club'))).toBe('3 of 5');
    expect(counts(await page(tutor, own, 'class'))).toBe('3 of 3');
  });

  it('of other classes are an administrator’s own, and those in no class are not', async () => {
    const { own, people } = await club(2, 4);
    expect(counts(await page(administrator, own, 'club'))).toBe('3 of 5');
    expect(counts(await page(administrator, own, 'all'))).toBeNull();
    await recordAnswers(app, (await addPeople(app, 1)).map(wrong));
    expect(counts(await page(administrator, own, 'all'))).toBe(`3 of ${people.length + 1}`);
  });

  it('leave the queries of a hidden question where all tutors see them', async () => {
    const { own, people } = await club(2);
    await app.rows(
      `INSERT INTO query (id, question_id, revision, person_id, body, raised_at) VALUES (gen_random_uuid(), $1, 1, $2, 'Two are right.', now())`,
      [await idOf(code), people[4]],
    );
    expect((await page(tutor, own, 'club')).words).toContain('Two are right.');
    expect((await tutor.get(`/classes/${own}/questions?of=club`)).words).not.toContain('Two are right.');
  });
});

describe('another tutor’s class', () => {
  it('answers as one that does not exist, on both pages and for every scope', async () => {
    const { foreign } = await club(6);
    const question = await idOf(code);
    for (const of of ['class', 'club', 'all']) {
      for (const path of ['', `/${question}`]) {
        const [other, none] = [
          await tutor.get(`/classes/${foreign}/questions${path}?of=${of}`),
          await tutor.get(`/classes/999999/questions${path}?of=${of}`),
        ];
        expect([other.status, other.words]).toEqual([404, none.words]);
      }
    }
    expect((await administrator.get(`/classes/${foreign}/questions`)).status).toBe(200);
  });

  it('and a question that is not there answer alike', async () => {
    const { own } = await club(0);
    for (const path of ['999999', '0', 'x', '1e3', '99999999999999'])
      expect((await tutor.get(`/classes/${own}/questions/${path}`)).status).toBe(404);
  });

  it('is nothing for a candidate, not even a member', async () => {
    const odo = await app.candidate('Odo');
    const own = await addClass(app, 'Own', [tessa], [await personNamed(app, 'Odo')]);
    expect((await odo.get(`/classes/${own}/questions`)).status).toBe(403);
    expect((await odo.get(`/classes/${own}/questions/${await idOf(code)}`)).status).toBe(403);
  });
});

describe('few people', () => {
  async function classOf(count: number, answer: (person: number) => AnswerGiven): Promise<{ list: Shown; one: Shown }> {
    const people = await addPeople(app, count);
    const own = await addClass(app, 'Own', [tessa], people);
    await recordAnswers(app, people.map(answer));
    return { list: await tutor.get(`/classes/${own}/questions`), one: await page(tutor, own, 'class') };
  }

  it('none: says so, and what comes', async () => {
    const { list, one } = await classOf(0, right);
    expect(list.words).toContain('Nobody in this class has answered a question yet. As answers come in, questions to look at stand here.');
    expect(one.words).toContain('Nobody has answered it yet.');
  });

  // Wilson's limits: 1 of 1 21 to 100 %, 2 of 2 34 to 100 %, 5 of 5 57 to 100 % (guidelines: all right of 5, at least 0.57).
  it.each([
    [1, '1 of 1 right at first sight, 95 % limits 21 to 100 %'],
    [2, '2 of 2 right at first sight, 95 % limits 34 to 100 %'],
    [5, '5 of 5 right at first sight, 95 % limits 57 to 100 %'],
  ])('%i, all right: counts with their limits, and too few to tell', async (count, words) => {
    const { list, one } = await classOf(count, right);
    expect(one.words).toContain(words);
    expect(one.words).toContain('Too few answers to tell');
    expect(list.words).toContain('1 question with too few answers to tell');
    expect(list.html.querySelectorAll('.suspect')).toHaveLength(0);
  });

  it('five, all wrong: nobody is right, and five are enough to say no more than that', async () => {
    const { one } = await classOf(5, wrong);
    expect(counts(one)).toBe('0 of 5');
    expect(one.words).toContain('Not told yet: it takes 10 people');
  });

  it('twelve, all wrong: fewer are right than by guessing, so the question stands first with its key', async () => {
    // Wilson's upper limit of 0 of 12 is 24 %, below one in four.
    const { list } = await classOf(12, wrong);
    const first = list.html.querySelector('.suspect');
    expect(first?.querySelector('h2')?.text).toContain(code);
    expect(first?.text).toContain('Fewer are right than by guessing: 0 of 12');
    expect(first?.text).toContain('Check the key first.');
    const rows = first?.querySelectorAll('tbody tr').map((row) => row.querySelectorAll('th, td').map(({ text }) => text.trim()));
    expect(rows).toEqual([
      ['A Key of AA-01-001', 'Key', '0'],
      ['B Wrong one of AA-01-001', '', '0'],
      ['C Wrong two of AA-01-001', '', '12'],
      ['D Wrong three of AA-01-001', '', '0'],
    ]);
    expect(list.words).toContain('One question to look at.');
  });
});

describe('the list', () => {
  it('holds what is asked about in a query, though the answers are too few to tell', async () => {
    const { own, people } = await club(0);
    const id = '11111111-1111-4111-8111-111111111111';
    await app.rows(
      `INSERT INTO query (id, question_id, revision, person_id, body, raised_at) VALUES ($1, $2, 1, $3, 'My <meter> says 12 A.', now())`,
      [id, await idOf(code), people[0]],
    );
    const list = await tutor.get(`/classes/${own}/questions`);
    expect(list.html.querySelector('.suspect a[href^="/queries/"]')?.getAttribute('href')).toBe(`/queries/${id}`);
    expect(list.words).toContain('A query waits for an answer: My <meter> says 12 A.');
  });

  it('shows twelve in full, worst first, and folds the rest away', async () => {
    const codes = [code, ...Array.from({ length: 13 }, (_, index) => `AA-01-${index + 101}`)];
    const people = await addPeople(app, 24);
    const own = await addClass(app, 'Own', [tessa], people);
    // One right answer fewer from question to question; the last ones have nobody right.
    await recordAnswers(
      app,
      codes.flatMap((each, place) =>
        people.map((person, index) => {
          const isRight = index < Math.max(0, 1 - place);
          return { person, code: each, given: isRight ? '0' : '1', right: isRight };
        }),
      ),
    );
    const list = await tutor.get(`/classes/${own}/questions`);
    expect(list.words).toContain('14 questions to look at, the worst first.');
    const shown = list.html.querySelectorAll('.suspect h2 .id').map(({ text }) => text);
    expect(shown).toHaveLength(12);
    expect(shown).not.toContain(code);
    expect(list.html.querySelectorAll('details summary').map(({ text }) => text)).toEqual(['2 more to look at']);
    expect(list.html.querySelector('details')?.text).toContain(code);
  });
});
