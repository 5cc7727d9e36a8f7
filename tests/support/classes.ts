import type { TestApp } from './app.js';

/** Classes straight into the database, with members who know what a test says. */

export async function makeClass(
  app: TestApp,
  name: string,
  tutorName: string | null,
  more: { examOn?: string; paper?: string } = {},
): Promise<number> {
  const [made] = await app.rows<{ id: number }>('INSERT INTO study_class (name, exam_on, paper) VALUES ($1, $2, $3) RETURNING id', [
    name,
    more.examOn ?? null,
    more.paper ?? null,
  ]);
  const id = made?.id ?? 0;
  if (tutorName !== null)
    await app.rows('INSERT INTO class_tutor (class_id, person_id) SELECT $1, id FROM person WHERE display_name = $2', [id, tutorName]);
  return id;
}

/** A candidate enrolled in every question, without a browser. @returns the person's id */
export async function addMember(
  app: TestApp,
  classId: number | null,
  name: string,
  more: { seenAt?: string; region?: string } = {},
): Promise<number> {
  const [person] = await app.rows<{ id: number }>(
    `INSERT INTO person (display_name, role, time_zone, region, created_at, last_seen_at) VALUES ($1, 'candidate', 'Europe/London', $3, now(), $2) RETURNING id`,
    [name, more.seenAt ?? null, more.region ?? 'uk'],
  );
  const id = person?.id ?? 0;
  await app.rows(
    'INSERT INTO memory (person_id, question_id, topic_id) SELECT $1, q.id, q.topic_id FROM question q WHERE NOT q.retired AND $2 = ANY (q.regions) ORDER BY q.id',
    [id, more.region ?? 'uk'],
  );
  if (classId !== null) await app.rows('INSERT INTO class_member (class_id, person_id) VALUES ($1, $2)', [classId, id]);
  return id;
}

export interface Known {
  code: string;
  stability: number;
  lastDay: number;
  surelyWrong?: boolean;
}

/** What a member remembers of a question; one answer lies behind it. */
export async function knows(app: TestApp, personId: number, { code, stability, lastDay, surelyWrong }: Known): Promise<void> {
  await app.rows(
    `UPDATE memory SET stability = $3, difficulty = 5, last_day = $4, due_day = $4 + 1, reps = 1, surely_wrong = $5
     WHERE person_id = $1 AND question_id = (SELECT id FROM question WHERE code = $2)`,
    [personId, code, stability, lastDay, surelyWrong ?? false],
  );
}

export interface Given {
  code: string;
  given: string;
  right: boolean;
  certainty?: string;
  tellTale?: string;
  at?: string;
  /** False for an answer that is not the first. */
  first?: boolean;
}

/** A line in the record of answers. */
export async function gave(app: TestApp, personId: number, { code, given, right, certainty, tellTale, at, first }: Given): Promise<void> {
  await app.rows(
    `INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", tell_tale, rating, day, answered_at, reps_after,
       stability_before, difficulty_before, last_day_before)
     SELECT gen_random_uuid(), $1, q.id, q.current_revision, 1, 'uk', $3, $4, $5, $6, CASE WHEN $5 THEN 3 ELSE 1 END, 20000, $7, 1,
       CASE WHEN $8 THEN NULL ELSE 1 END, CASE WHEN $8 THEN NULL ELSE 5 END, CASE WHEN $8 THEN NULL ELSE 19999 END
     FROM question q WHERE q.code = $2`,
    [personId, code, given, certainty ?? 'sure', right, tellTale ?? null, at ?? '2026-11-24T19:00:00Z', first ?? true],
  );
}
