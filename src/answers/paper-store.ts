import type { PoolClient } from 'pg';
import type { Region } from '../core/syllabus.js';

/** The record of answers that were given by letter: all of one sitting, or all to one question of a class evening, in one transaction. */

export interface LockedMemory {
  personId: number;
  questionId: number;
  /** Of the question as it is asked now. */
  currentRevision: number;
  stability: number | null;
  difficulty: number | null;
  lastDay: number | null;
  dueDay: number | null;
  reps: number;
}

/**
 * The memories of these people on these questions, held until the transaction ends, so that none moves meanwhile. One person with many
 * questions, or one question of many people: taken in that order, they never wait for each other in a circle.
 */
export async function lockMemories(sql: PoolClient, personIds: readonly number[], questionIds: readonly number[]): Promise<LockedMemory[]> {
  const { rows } = await sql.query<LockedMemory>(
    `SELECT m.person_id AS "personId", m.question_id AS "questionId", q.current_revision AS "currentRevision", m.stability, m.difficulty,
       m.last_day AS "lastDay", m.due_day AS "dueDay", m.reps
     FROM memory m JOIN question q ON q.id = m.question_id
     WHERE m.person_id = ANY ($1) AND m.question_id = ANY ($2) ORDER BY m.person_id, m.question_id FOR UPDATE OF m`,
    [personIds, questionIds],
  );
  return rows;
}

export interface PaperAnswer {
  token: string;
  personId: number;
  questionId: number;
  revision: number;
  seed: number;
  given: string;
  right: boolean;
  tellTale: string | null;
  /** Null where the memory does not move: it did so on the same day already. */
  rating: number | null;
  /** In the person's own calendar. */
  day: number;
  answeredAt: Date;
  expectedRecall: number | null;
  before: LockedMemory;
  after: { stability: number | null; difficulty: number | null; lastDay: number | null; dueDay: number | null };
}

/** Adds the answers and moves the memories, which must have been locked before. */
export async function recordPaperAnswers(sql: PoolClient, region: Region, answers: readonly PaperAnswer[]): Promise<void> {
  const rows = answers.map(({ before, after, ...answer }) => ({
    ...answer,
    sb: before.stability,
    db: before.difficulty,
    lb: before.lastDay,
    sa: after.stability,
    da: after.difficulty,
    la: after.lastDay,
    ua: after.dueDay,
  }));
  await sql.query(
    `WITH given AS (
       SELECT * FROM jsonb_to_recordset($2) AS g(token uuid, "personId" int, day int, "questionId" int, revision int, seed int, given text, "right" boolean, "tellTale" text,
         rating int, "answeredAt" timestamptz, "expectedRecall" float8, sb float8, db float8, lb int, sa float8, da float8, la int, ua int)
     ), moved AS (
       UPDATE memory m SET stability = g.sa, difficulty = g.da, last_day = g.la, due_day = g.ua, reps = m.reps + 1
       FROM given g WHERE m.person_id = g."personId" AND m.question_id = g."questionId" RETURNING m.person_id, m.question_id, m.reps
     )
     INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", tell_tale, rating, day, answered_at,
       expected_recall, stability_after, difficulty_after, due_day_after, reps_after, stability_before, difficulty_before, last_day_before)
     SELECT g.token, g."personId", g."questionId", g.revision, g.seed, $1, g.given, 'unsaid', g."right", g."tellTale", g.rating, g.day, g."answeredAt",
       g."expectedRecall", g.sa, g.da, g.ua, moved.reps, g.sb, g.db, g.lb
     FROM given g JOIN moved ON moved.person_id = g."personId" AND moved.question_id = g."questionId"`,
    [region, JSON.stringify(rows)],
  );
}
