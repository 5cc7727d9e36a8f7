import { randomUUID } from 'node:crypto';
import type { RecordedCertainty } from '../../src/core/questions/schema.js';
import type { Pack } from '../../src/core/pack.js';
import type { TestApp } from './app.js';
import { sampleOf } from './kind-samples.js';
import { smallPack } from './small-pack.js';

/** People, classes and answers put into the record at once, where a test is about what is made of them. */

/** The small pack with more single questions, AA-01-101 and so on, enough to hold people against the rest; and AA-02-101 with statements. */
export function widerPack(singles: number): Pack {
  const pack = smallPack();
  const [first] = pack.questions;
  if (first?.kind !== 'single') throw new Error('the small pack does not begin with a single best answer');
  const more = Array.from({ length: singles }, (_, index) => ({
    ...structuredClone(first),
    id: `AA-01-${String(index + 101)}`,
    stem: `Stem of ${index + 101}?`,
    options: first.options.map((option, place) => ({
      ...option,
      text: `${['Key', 'One', 'Two', 'Three'][place] ?? ''} of ${index + 101}`,
    })),
  }));
  const statements = { ...sampleOf('several'), id: 'AA-02-101', objective: 'AA-02' };
  return { ...pack, questions: [...pack.questions, ...more, statements] };
}

export async function addPeople(app: TestApp, count: number): Promise<number[]> {
  const rows = await app.rows<{ id: number }>(
    `INSERT INTO person (display_name, role, time_zone, region) SELECT 'Person ' || n, 'candidate', 'Europe/London', 'uk' FROM generate_series(1, $1) n RETURNING id`,
    [count],
  );
  return rows.map(({ id }) => id);
}

export async function addClass(app: TestApp, name: string, tutors: readonly number[], members: readonly number[]): Promise<number> {
  const [made] = await app.rows<{ id: number }>('INSERT INTO study_class (name) VALUES ($1) RETURNING id', [name]);
  const id = made?.id ?? 0;
  await app.rows('INSERT INTO class_tutor (class_id, person_id) SELECT $1, unnest($2::int[])', [id, tutors]);
  await app.rows('INSERT INTO class_member (class_id, person_id) SELECT $1, unnest($2::int[])', [id, members]);
  return id;
}

export const personNamed = async (app: TestApp, name: string): Promise<number> =>
  (await app.rows<{ id: number }>('SELECT id FROM person WHERE display_name = $1', [name]))[0]?.id ?? 0;

export interface AnswerGiven {
  person: number;
  code: string;
  given: string;
  right: boolean;
  certainty?: RecordedCertainty;
  revision?: number;
  tellTale?: string;
}

/** In this order: the second answer of a person to a question is a later one. */
export async function recordAnswers(app: TestApp, answers: readonly AnswerGiven[]): Promise<void> {
  const rows = answers.map(({ person, code, given, right, certainty = 'fairly', revision = 1, tellTale = null }, place) => ({
    ...{ token: randomUUID(), person, code, given, right, certainty, revision, tellTale, place },
  }));
  await app.rows(
    `INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", tell_tale, rating, day, answered_at, reps_after)
     SELECT g.token, g.person, q.id, g.revision, 1, 'uk', g.given, g.certainty, g."right", g."tellTale", 3, 20000, timestamptz '2026-11-20 18:00Z' + g.place * interval '1 second',
       (SELECT count(*) FROM answer a WHERE a.person_id = g.person AND a.question_id = q.id)
         + row_number() OVER (PARTITION BY g.person, q.id ORDER BY g.place)
     FROM jsonb_to_recordset($1) AS g(token uuid, person int, code text, given text, "right" boolean, certainty text, revision int, "tellTale" text, place int)
       JOIN question q ON q.code = g.code`,
    [JSON.stringify(rows)],
  );
}
