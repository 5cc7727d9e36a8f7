import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { Readable } from 'node:stream';
import pg from 'pg';
import { extract, pack, type Header } from 'tar-stream';
import { projectFolder } from '../../src/platform/project-folder.js';
import { join } from 'node:path';
import { ask } from './embedded.js';

/** Databases with all sorts of values in them, and files of backups taken apart and put together by hand. */

export const migrationsFolder = join(projectFolder, 'prisma', 'migrations');
export const program = { version: '9.8.7' };

/** Tables whose rows no backup holds. */
export const notInBackups = ['session', 'guess', 'pack_upload'];

/** Every row of every table as the database's own JSON, sorted: by table. */
export async function contents(url: string, except: readonly string[] = []): Promise<Record<string, string[]>> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const tables = await client.query<{ name: string }>(
      `SELECT table_name::text AS name FROM information_schema.tables WHERE table_schema = 'public' AND table_type = 'BASE TABLE' ORDER BY 1`,
    );
    const all: Record<string, string[]> = {};
    for (const { name } of tables.rows.filter(({ name }) => !except.includes(name))) {
      const { rows } = await client.query<{ row: string }>(
        `SELECT row_to_json(t)::text AS row FROM "${name}" t ORDER BY row_to_json(t)::text COLLATE "C"`,
      );
      all[name] = rows.map(({ row }) => row);
    }
    return all;
  } finally {
    await client.end();
  }
}

/** Where the counters stand. */
export async function counters(url: string): Promise<unknown[]> {
  return await ask(url, 'SELECT sequencename::text, last_value::text FROM pg_sequences ORDER BY 1');
}

/** What a text may hold that a file of lines and tabs might trip over. */
export const oddTexts = [
  'tab\tand\ttab',
  'line\nbreak\r\nand\rreturn',
  'back\\slash \\n \\t \\N \\x41 \\',
  '\\.',
  '\n\\.\n',
  '\\N',
  'NULL',
  '"quoted", \'quoted\', {braced}, (1,2)',
  'ümläut ﬁ ‮right‬ 🪗 e\u0301',
  '\u0001\u0008\u000b\u000c\u001f\u007f\u2028',
  ' ends in space ',
  'é'.repeat(90),
];

/** Fills every kind of column with what is hard to write down. @param answers how many rows the largest table has */
export async function fillByHand(url: string, answers = 400): Promise<void> {
  await ask(url, `INSERT INTO installation (cookie_secret, phrase_salt) VALUES ($1, $2)`, [
    Buffer.from([...Array(256).keys()]),
    Buffer.from('\\.\n\t\0'),
  ]);
  await ask(
    url,
    `INSERT INTO pack (slug, title, version, licence, language, regions, content_hash, cautions, sources)
     VALUES ('odd', $1, '1', 'x', 'en', $2, 'h', $3, $4)`,
    [
      oddTexts[2],
      oddTexts,
      JSON.stringify(oddTexts.map((text) => ({ [text]: text, deep: [null, 1e-7, 12345678901234567890n.toString()] }))),
      '[]',
    ],
  );
  await ask(
    url,
    `INSERT INTO person (display_name, role, time_zone, region, phrase_hash, created_at)
     SELECT text, 'candidate', 'Europe/London', 'uk', sha256(convert_to(text, 'UTF8')), timestamptz '2026-01-02 03:04:05.678+00' + n * interval '1 millisecond'
     FROM unnest($1::text[]) WITH ORDINALITY AS t (text, n)`,
    [oddTexts],
  );
  await ask(url, `UPDATE person SET slip_by = 1, slip_at = now() WHERE id > 3`);
  await ask(url, `DELETE FROM person WHERE id = 2`);
  await ask(
    url,
    `INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", day, answered_at, reps_after,
       stability_before, stability_after, expected_recall, score)
     SELECT gen_random_uuid(), CASE WHEN n % 11 < 1 THEN 1 ELSE 2 + n % 11 END, n, 1, n, 'uk', ($2::text[])[1 + n % 12], 'sure', n % 3 = 0, n, now(), 1,
       CASE WHEN n % 2 = 0 THEN NULL ELSE 1.0 / n END, exp(n % 600), random(), NULL
     FROM generate_series(1, $1::int) n`,
    [answers, oddTexts],
  );
  await ask(
    url,
    `INSERT INTO study_plan (person_id, minutes, weekdays_off, days_off, saved_at) VALUES (1, 20, '{}', '{1,NULL,3}', 'infinity'), (3, 5, NULL, '{}', '-infinity')`,
  );
  await ask(url, `INSERT INTO study_class (name, exam_on) VALUES ($1, '2026-12-14')`, [oddTexts[8]]);
  await ask(url, `INSERT INTO class_member (class_id, person_id) SELECT 1, id FROM person`);
  await ask(url, `INSERT INTO session (id_hash, person_id, created_at, last_seen_at, expires_at) VALUES ('\\x01', 1, now(), now(), now())`);
  await ask(url, `INSERT INTO guess (key, count, window_start) VALUES ('\\x01', 1, now())`);
  await ask(
    url,
    `INSERT INTO pack_upload (id, person_id, file_name, report, uploaded_at) VALUES (gen_random_uuid(), 1, 'x.zip', '{}', now())`,
  );
}

export interface TarEntry {
  header: Partial<Header> & Pick<Header, 'name'>;
  data: Buffer;
}

/** What is in a backup that is not encrypted, but for its last entry. */
export async function entriesIn(file: string): Promise<TarEntry[]> {
  const entries: TarEntry[] = [];
  for await (const entry of Readable.from([await readFile(file)]).pipe(extract())) {
    const parts: Buffer[] = [];
    for await (const part of entry as AsyncIterable<Buffer>) parts.push(part);
    if (entry.header.name !== 'whole.sha256') entries.push({ header: entry.header, data: Buffer.concat(parts) });
  }
  return entries;
}

async function tarred(entries: readonly TarEntry[]): Promise<Buffer> {
  const tar = pack();
  for (const { header, data } of entries) tar.entry({ ...header, size: data.length, mtime: new Date(0), mode: 0o600 }, data);
  tar.finalize();
  const parts: Buffer[] = [];
  for await (const part of tar as AsyncIterable<Buffer>) parts.push(part);
  return Buffer.concat(parts);
}

/** Writes entries as a backup whose last sum is right, so that only what is in it can be wrong. */
export async function writeEntries(file: string, entries: readonly TarEntry[]): Promise<void> {
  const body = (await tarred(entries)).subarray(0, -1024);
  const sum = createHash('sha256').update(body).digest('hex');
  const tail = await tarred([{ header: { name: 'whole.sha256' }, data: Buffer.from(`${sum}\n`) }]);
  await writeFile(file, Buffer.concat([body, tail]));
}

/** The same entries with one of them changed. */
export function changed(entries: readonly TarEntry[], name: string, change: (data: Buffer) => Buffer): TarEntry[] {
  return entries.map((entry) => (entry.header.name === name ? { ...entry, data: change(entry.data) } : entry));
}
