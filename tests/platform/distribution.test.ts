import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { freshDatabase, type TestDatabase } from '../support/database.js';

/**
 * How the tables could be spread over several machines. What grows with every candidate's every answer is keyed so that it can be spread
 * by person; the rule for that is PostgreSQL's own for a partitioned table, and the same in a distributed PostgreSQL: every unique key
 * must hold the column that the rows are spread by (PostgreSQL 18 manual, 5.12.2.3, "Limitations"). It is tried here, not read.
 */

type Way = 'by person' | 'on every machine' | 'on one machine';

/** Every table, with the reason. docs/scaling.md tells what those on one machine would need. */
const ways: Record<string, [Way, string]> = {
  answer: ['by person', 'a row for every answer: by far the largest'],
  memory: ['by person', 'a row for every candidate and question'],
  outlook_day: ['by person', 'a row for every candidate and day of study'],
  study_plan: ['by person', 'read with the memories, one row for each'],
  removal_notice: ['by person', 'one row for each who is told'],
  recovery_code: ['by person', 'read with the person who signs in'],

  person: ['on every machine', 'found by phrase, name and link, so its unique keys are not the number; everything points to it'],
  pack: ['on every machine', 'the bank: read by all, written when a pack is added'],
  topic: ['on every machine', 'the bank'],
  objective: ['on every machine', 'the bank'],
  drawing: ['on every machine', 'the bank'],
  question: ['on every machine', 'the bank'],
  question_revision: ['on every machine', 'the bank'],
  study_class: ['on every machine', 'small; joined to what lies by person'],
  class_member: ['on every machine', 'small; a class is read by its number and joined to what lies by person'],
  class_tutor: ['on every machine', 'as the members'],

  round: ['on one machine', 'its key is a number of its own, without the person'],
  round_item: ['on one machine', 'it has no person, and its three keys are without one'],
  paper: ['on one machine', 'many candidates sit one paper'],
  paper_item: ['on one machine', 'with its paper'],
  own_blueprint: ['on one machine', 'a few rows'],
  sitting: ['on one machine', 'guests have no number, and its keys are the paper’s'],
  sitting_answer: ['on one machine', 'with its sitting'],
  evening: ['on one machine', 'one class at a time'],
  evening_item: ['on one machine', 'with its evening'],
  evening_answer: ['on one machine', 'read by evening, not by person'],
  session: ['on one machine', 'found by the cookie before the person is known'],
  sign_off: ['on one machine', 'a few rows for each candidate, its key a number of its own'],
  query: ['on one machine', 'read by question'],
  pack_upload: ['on one machine', 'kept for a day'],
  topic_day: ['on one machine', 'one row for each topic and day'],
  guess: ['on one machine', 'counted over all servers at one place, and forgotten'],
  installation: ['on one machine', 'one row'],
  staff_change: ['on one machine', 'only ever added to, by staff'],
  removed_person: ['on one machine', 'one row for each who left'],
  job_run: ['on one machine', 'decides which server runs a job'],
  _prisma_migrations: ['on one machine', 'of the migrations'],
};
const byPerson = Object.keys(ways).filter((table) => ways[table]?.[0] === 'by person');

let database: TestDatabase;
let client: pg.Client;
beforeAll(async () => {
  database = await freshDatabase();
  client = new pg.Client({ connectionString: database.url });
  await client.connect();
});
afterAll(async () => {
  await client?.end();
  await database?.drop();
});

const parts = 4;

/** An empty copy with the same columns and the same unique keys, cut into four by person. */
async function spread(table: string, by = 'person_id'): Promise<string> {
  const copy = `${table}_spread`;
  await client.query(`DROP TABLE IF EXISTS "${copy}"`);
  await client.query(
    `CREATE TABLE "${copy}" (LIKE "${table}" INCLUDING DEFAULTS INCLUDING GENERATED INCLUDING INDEXES) PARTITION BY HASH (${by})`,
  );
  for (let part = 0; part < parts; part += 1)
    await client.query(`CREATE TABLE "${copy}_${part}" PARTITION OF "${copy}" FOR VALUES WITH (MODULUS ${parts}, REMAINDER ${part})`);
  return copy;
}

/** What stands in a column that must not be empty: another value for each `n`, where the type has room for it. */
const made: Record<string, string> = {
  integer: 'n::int',
  uuid: 'gen_random_uuid()',
  bytea: "decode(md5(n::text), 'hex')",
  text: 'n::text',
  boolean: 'false',
  date: "date '2026-11-25' + n::int",
  'timestamp with time zone': 'now()',
  'double precision': 'n::float8',
  ARRAY: "'{}'",
  jsonb: "'{}'",
};

/** Three rows for each of sixty people. */
async function fill(table: string): Promise<number> {
  const { rows } = await client.query<{ name: string; type: string }>(
    `SELECT column_name AS name, data_type AS type FROM information_schema.columns
     WHERE table_name = $1 AND table_schema = 'public' AND is_nullable = 'NO' AND column_name <> 'person_id' ORDER BY ordinal_position`,
    [table],
  );
  const alone = rows.every(({ type }) => type !== 'uuid') && (await keysOf(table)).some((key) => key === 'person_id');
  const values = rows.map(({ type }) => made[type] ?? `no value for ${type}`);
  const result = await client.query(
    `INSERT INTO "${table}" (person_id, ${rows.map(({ name }) => `"${name}"`).join(', ')})
     SELECT p, ${values.join(', ')} FROM generate_series(1, 60) p, generate_series(1, ${alone ? 1 : 3}) n`,
  );
  return result.rowCount ?? 0;
}

/** The unique keys, each as its columns with commas between. */
async function keysOf(table: string): Promise<string[]> {
  const { rows } = await client.query<{ key: string }>(
    `SELECT (SELECT string_agg(a.attname, ',' ORDER BY k.place) FROM unnest(i.indkey::int2[]) WITH ORDINALITY k(number, place)
       JOIN pg_attribute a ON a.attrelid = i.indrelid AND a.attnum = k.number) AS key
     FROM pg_index i WHERE i.indrelid = $1::regclass AND i.indisunique ORDER BY 1`,
    [`public."${table}"`],
  );
  return rows.map(({ key }) => key);
}

const refusal = /unique constraint on partitioned table must include all partitioning columns/;

describe('The tables', () => {
  it('are all accounted for, each with its reason', async () => {
    const { rows } = await client.query<{ name: string }>(
      `SELECT table_name AS name FROM information_schema.tables WHERE table_schema = 'public' AND table_type = 'BASE TABLE'`,
    );
    expect(rows.map(({ name }) => name).sort()).toEqual(Object.keys(ways).sort());
    for (const [, reason] of Object.values(ways)) expect(reason).not.toBe('');
  });

  it.each(byPerson)('%s can be spread by person with all its unique keys, and each person’s rows lie together', async (table) => {
    const copy = await spread(table);
    expect(await keysOf(copy)).toEqual(await keysOf(table));
    const rows = await fill(copy);
    const { rows: lie } = await client.query<{ people: number; places: number; parts: number; rows: number }>(
      `SELECT count(DISTINCT person_id)::int AS people, count(DISTINCT (person_id, tableoid))::int AS places,
         count(DISTINCT tableoid)::int AS parts, count(*)::int AS rows FROM "${copy}"`,
    );
    expect(lie).toEqual([{ people: 60, places: 60, parts, rows }]);
    // The keys hold over all parts: the same rows again are refused.
    await expect(client.query(`INSERT INTO "${copy}" SELECT * FROM "${copy}" LIMIT 1`)).rejects.toThrow(/duplicate key/);
  });

  it('that are spread by person point to none that lies on one machine', async () => {
    const { rows } = await client.query<{ from: string; to: string }>(
      `SELECT conrelid::regclass::text AS from, confrelid::regclass::text AS to FROM pg_constraint WHERE contype = 'f'`,
    );
    const stray = rows.filter(({ from, to }) => byPerson.includes(from) && ways[to]?.[0] !== 'on every machine');
    expect(stray).toEqual([]);
  });

  it('that have a person and are not spread by it are refused by the same rule, so that the reason is true', async () => {
    for (const table of ['round', 'sitting', 'session', 'sign_off', 'evening_answer', 'query'])
      await expect(spread(table)).rejects.toThrow(refusal);
    await expect(spread('person', 'id')).rejects.toThrow(refusal);
  });

  it('would be refused with a key of the token alone, as answers had it once', async () => {
    await client.query('CREATE TABLE told (LIKE answer); ALTER TABLE told ADD PRIMARY KEY (token)');
    await expect(spread('told')).rejects.toThrow(refusal);
    await client.query('DROP TABLE told');
  });

  it('are asked for one answer at one part only, when the person is named', async () => {
    const copy = await spread('answer');
    const { rows } = await client.query<{ 'QUERY PLAN': string }>(
      `EXPLAIN SELECT * FROM "${copy}" WHERE person_id = 7 AND token = '00000000-0000-4000-8000-000000000000'`,
    );
    expect(rows.filter((row) => row['QUERY PLAN'].includes(`on ${copy}_`))).toHaveLength(1);
  });
});
