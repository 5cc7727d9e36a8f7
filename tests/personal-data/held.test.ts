import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Person } from '../../src/accounts/index.js';
import { statements } from '../../src/personal-data/columns.js';
import { heldService } from '../../src/personal-data/index.js';
import type { Shown } from '../support/app.js';
import { marker, wholeLife, type Life } from '../support/life.js';

/** What is held about somebody: everything, in words and as a file, and about nobody else. */

let life: Life;
beforeAll(async () => {
  life = await wholeLife();
}, 120_000);
afterAll(() => life.app.close());

type File = Record<string, Record<string, unknown>[]>;
const fileOf = async (visitor = life.person): Promise<File> => JSON.parse((await visitor.get('/me/data.json')).text) as File;

describe('the file', () => {
  it('has a line for each row that is held, with what was done on the pages', async () => {
    const file = await fileOf();
    const counted = async (text: string): Promise<number> => (await life.app.rows<{ n: number }>(text, [life.id]))[0]?.n ?? -1;
    expect(file['answers']).toHaveLength(await counted('SELECT count(*)::int AS n FROM answer WHERE person_id = $1'));
    expect(file['memories']).toHaveLength(await counted('SELECT count(*)::int AS n FROM memory WHERE person_id = $1 AND reps > 0'));
    expect(file['account']?.[0]).toMatchObject({ number: life.id, name: marker.name, role: 'candidate', region: 'uk', slip_by: 'Tessa' });
    expect(file['classes']?.[0]).toMatchObject({ class: 'Thursday beginners', extra_time: 0 });
    expect(file['plan']?.[0]).toMatchObject({ exam_day: '2027-02-20', minutes: 15 });
    expect(file['sign_offs']?.[0]).toMatchObject({ remarks: marker.remarks, signed_by: 'Tessa', seen_on: '2026-11-19' });
    expect(file['queries']?.[0]).toMatchObject({ body: marker.query, answer: marker.answer, answered_by: 'Tessa' });
    expect(file['evenings']?.[0]).toMatchObject({ evening: 'Ladders', choice: 'A', place: 1 });
    expect(file['sheets']?.map(({ title }) => title).sort()).toEqual(['Mock paper 1', 'Winter paper']);
    expect(file['sheets']?.find(({ title }) => title === 'Winter paper')?.['answers']).toMatchObject([{ place: 2, choice: 'C' }]);
    expect(file['papers_made']).toHaveLength(1);
    expect(file['rounds']?.[0]?.['questions']).toHaveLength(
      await counted('SELECT count(*)::int AS n FROM round_item i JOIN round r ON r.id = i.round_id WHERE r.person_id = $1'),
    );
    expect(file['sessions']).toHaveLength(1);
    expect(file['changes_about']?.map(({ what }) => what)).toContain('makes a new return slip');
  });

  it('says each answer with the question’s text, and the words that were chosen', async () => {
    const answers = (await fileOf())['answers'] ?? [];
    const chosen = answers.filter(({ chosen }) => chosen !== null);
    expect(chosen.length).toBeGreaterThan(0);
    for (const row of chosen) {
      expect(row['text']).toBe(`Stem of ${String(row['question'])}?`);
      // The small pack writes its key first: option 0.
      expect(row['chosen']).toMatch(row['right'] === true ? /^Key of/ : /^Wrong (one|two|three) of/);
    }
  });

  it('writes moments as ISO 8601 in UTC and days as dates, and is a download that no cache keeps', async () => {
    const shown = await life.person.get('/me/data.json');
    expect(shown.headers).toMatchObject({
      'content-type': 'application/json; charset=utf-8',
      'content-disposition': 'attachment; filename="rungwise-my-data.json"',
      'cache-control': 'no-store',
    });
    const file = JSON.parse(shown.text) as File & { made_at: string };
    expect(file.made_at).toBe('2026-11-26T19:30:00.000Z');
    expect(file['answers']?.[0]).toMatchObject({ answered_at: '2026-11-26T19:30:00.000Z', day: '2026-11-26' });
  });

  it('holds no hash, secret or token of a session, and nothing of another candidate', async () => {
    const { text } = await life.person.get('/me/data.json');
    const [row] = await life.app.rows<{ phrase: string; session: string }>(
      `SELECT encode(phrase_hash, 'hex') AS phrase, (SELECT encode(id_hash, 'hex') FROM session s WHERE s.person_id = p.id LIMIT 1) AS session FROM person p WHERE id = $1`,
      [life.id],
    );
    for (const secret of [row?.phrase, row?.session, ...life.phrase.map((word) => `"${word}"`)]) expect(text).not.toContain(secret);
    for (const other of ['Odo', 'Wilf', 'Zqother', 'ZQNAME MARROW', 'Alma', 'Ludo']) expect(text, other).not.toContain(other);
  });

  it('of staff holds what they made and changed, and no candidate’s name or number', async () => {
    const file = await fileOf(life.world.tessa);
    expect(file['papers_set']?.[0]).toMatchObject({ title: 'Winter paper', class: 'Thursday beginners' });
    expect(file['queries_answered']?.[0]).toMatchObject({ answer: marker.answer });
    expect(file['signatures_given']?.[0]).toMatchObject({ skill: 'small/lead', as_name: 'Tessa' });
    expect(file['slips_made']).toHaveLength(1);
    expect(file['evenings_held']?.[0]).toMatchObject({ title: 'Ladders' });
    const changes = file['changes_made'] ?? [];
    expect(changes.map(({ what }) => what)).toContain('makes a new return slip');
    expect(changes.filter(({ about }) => Object.keys(about as object).some((key) => key === 'person' || key === 'member'))).toEqual([]);
    expect(JSON.stringify(file)).not.toMatch(/Zqname|Zqquery|Zqremarks|Odo/);
  });

  it('keeps silent about an answer of a class evening until the tutor shows it', async () => {
    const { person, app, evening } = life;
    await app.rows(`UPDATE evening_item SET state = 'closed' WHERE evening_id = $1 AND position = 1`, [evening]);
    const file = await fileOf(person);
    expect(file['evenings']?.[0]).toMatchObject({ choice: 'A', right: null });
    const [token] = await app.rows<{ token: string }>('SELECT token FROM evening_answer WHERE evening_id = $1', [evening]);
    expect(file['answers']?.map(({ id }) => id)).not.toContain(token?.token);
    await app.rows(`UPDATE evening_item SET state = 'shown' WHERE evening_id = $1 AND position = 1`, [evening]);
    expect((await fileOf(person))['answers']?.map(({ id }) => id)).toContain(token?.token);
  });
});

describe('the pages', () => {
  it('tell it in words, with who sees each thing, and lead to the whole, the file and the removal', async () => {
    const page = await life.person.get('/me/data');
    expect(page.status).toBe(200);
    for (const words of [
      marker.name,
      marker.query,
      marker.answer,
      marker.remarks,
      'Seen by: The tutors of your classes.',
      '18 months after your last visit',
    ])
      expect(page.words, words).toContain(words);
    const links = page.html.querySelectorAll('main a').map((link) => link.getAttribute('href'));
    for (const href of ['/me/data/all', '/me/data.json', '/me/remove', '/privacy']) expect(links).toContain(href);
    expect((await life.person.get('/me')).html.querySelector('a[href="/me/data"]')).not.toBeNull();
    expect((await life.person.get('/about')).html.querySelector('a[href="/me/data"]')).not.toBeNull();
    const whole = await life.person.get('/me/data/all');
    expect(whole.words).toMatch(/“Stem of [A-C]{2}-\d\d-\d{3}\?”: you gave “Key of [A-C]{2}-\d\d-\d{3}”, right, sure/);
    expect(whole.html.querySelectorAll('#answers li')).toHaveLength((await fileOf())['answers']?.length ?? -1);
  });

  it('of staff offer no removal of oneself', async () => {
    const page = await life.world.tessa.get('/me/data');
    expect(page.status).toBe(200);
    expect(page.html.querySelector('a[href="/me/remove"]')).toBeNull();
    expect((await life.world.tessa.get('/me/remove')).status).toBe(403);
  });
});

/** Columns that hold or point to a person, and why they are in no file. */
const notTold: Record<string, string> = {
  'person.start_token': 'made by the form that made the account; it opens nothing and says nothing',
  'person.phrase_hash': 'a secret: the file says that there is one',
  'person.password_hash': 'a secret: the file says that there is one',
  'person.totp_secret': 'a secret: the file says that there is one',
  'person.totp_step': 'which code was used last: of no use without the secret',
  'person.invitation_hash': 'a secret: the file has the end of its time',
  'session.id_hash': 'the scrambled value of a cookie',
  'sitting.guest_name': 'a name without an account: nobody can tell whose it is',
  'staff_change.role': 'told as as_role and by',
  'memory.topic_id': 'follows from the question',
  'removed_person.mark': 'of people who are gone',
  'removed_person.removed_at': 'of people who are gone',
};

/** Whether one of the statements reads this column of this table. */
const told = ({ table, column }: Column): boolean =>
  notTold[`${table}.${column}`] !== undefined ||
  Object.values(statements).some(
    (text) => new RegExp(String.raw`\b${table}\b`).test(text) && new RegExp(String.raw`\b${column}\b`).test(text),
  );

interface Column {
  table: string;
  column: string;
}

const keysToPeople = (): Promise<Column[]> =>
  life.app.rows<Column>(
    `SELECT c.conrelid::regclass::text AS table, a.attname AS column FROM pg_constraint c
     JOIN pg_attribute a ON a.attrelid = c.conrelid AND a.attnum = ANY (c.conkey) WHERE c.contype = 'f' AND c.confrelid = 'person'::regclass`,
  );

const namedLikePeople = (): Promise<Column[]> =>
  life.app.rows<Column>(
    `SELECT table_name AS table, column_name AS column FROM information_schema.columns WHERE table_schema = 'public'
       AND (column_name ~ '(person|guest|signer|tutor|maker|member)' OR column_name ~ '(^|_)(by|mark)$') AND table_name <> 'installation'`,
  );

describe('completeness', () => {
  it('every foreign key to a person, and every column that is named as one, is read by the file or listed with a reason', async () => {
    const keys = await keysToPeople();
    expect(keys.length).toBeGreaterThan(18);
    expect([...keys, ...(await namedLikePeople())].filter((column) => !told(column))).toEqual([]);
  });

  it('every column of the person’s own tables is told or listed with a reason', async () => {
    const columns = await life.app.rows<Column>(
      `SELECT table_name AS table, column_name AS column FROM information_schema.columns WHERE table_schema = 'public'
         AND table_name IN ('person', 'session', 'recovery_code', 'removal_notice', 'study_plan', 'outlook_day', 'round', 'round_item', 'answer', 'memory',
           'sign_off', 'query', 'sitting', 'sitting_answer', 'evening_answer', 'class_member', 'staff_change')`,
    );
    expect(columns.length).toBeGreaterThan(120);
    expect(columns.filter((column) => !told(column))).toEqual([]);
  });

  it('a table added tomorrow that points to a person, or is named as if it did, is missed', async () => {
    await life.app.rows('CREATE TABLE shoe_size (wearer int REFERENCES person(id), measured_by text)');
    expect((await keysToPeople()).filter((column) => !told(column))).toEqual([{ table: 'shoe_size', column: 'wearer' }]);
    expect((await namedLikePeople()).filter((column) => !told(column))).toEqual([{ table: 'shoe_size', column: 'measured_by' }]);
    await life.app.rows('DROP TABLE shoe_size');
  });
});

describe('a long record', () => {
  it('of twenty thousand answers goes out in pieces, on pages of bounded length, and nothing is left out', async () => {
    const { app, person, id } = life;
    await app.rows(
      `INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", day, answered_at, reps_after)
       SELECT gen_random_uuid(), $1, q.id, q.current_revision, 1, 'uk', '0', 'sure', true, 20000, '2026-11-01T00:00:00Z'::timestamptz + n * interval '1 second', 0
       FROM generate_series(1, 20000) n JOIN (SELECT * FROM question WHERE kind = 'single' ORDER BY id LIMIT 1) q ON true`,
      [id],
    );
    const total = (await app.rows<{ n: number }>('SELECT count(*)::int AS n FROM answer WHERE person_id = $1', [id]))[0]?.n ?? 0;
    const answers = (await fileOf())['answers'] ?? [];
    expect(new Set(answers.map(({ id: token }) => token)).size).toBe(total);
    expect(answers).toHaveLength(total);
    let lines = 0;
    for (let address: string | undefined = '/me/data/all'; address !== undefined;) {
      const page: Shown = await person.get(address);
      const own = page.html.querySelectorAll('#answers li').length;
      expect(own).toBeLessThanOrEqual(4000);
      lines += own;
      address = page.html
        .querySelectorAll('main a')
        .find((link) => link.text === 'The next part')
        ?.getAttribute('href');
    }
    expect(lines).toBe(total);
    expect((await person.get('/me/data')).words).toContain(`${total} lines: see all`);
    for (const odd of ['part=0', 'part=-1', 'part=x', 'part=999', 'part=1&part=2'])
      expect((await person.get(`/me/data/all?${odd}`)).status, odd).toBe(200);
  }, 240_000);

  it('that is read slowly holds no connection to the database meanwhile', async () => {
    const { db, clock } = life.app;
    const [row] = await life.app.rows<Person>(
      `SELECT id, role, time_zone AS "timeZone", display_name AS "displayName" FROM person WHERE id = $1`,
      [life.id],
    );
    const readers = Array.from({ length: 30 }, () => heldService({ db, clock }).json(row as Person));
    for (const reader of readers) for (let piece = 0; piece < 8; piece += 1) await reader.next();
    expect(db.pool.totalCount - db.pool.idleCount).toBe(0);
    for (const reader of readers) await reader.return(undefined);
  });
});
