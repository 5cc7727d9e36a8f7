import type { PoolClient } from 'pg';
import type { Region } from '../core/syllabus.js';

/** The record of answers that were given on a paper: all of one sitting at once, in the transaction that hands it in. */

export interface LockedMemory {
  questionId: number;
  stability: number | null;
  difficulty: number | null;
  lastDay: number | null;
  dueDay: number | null;
  reps: number;
}

/** The memories of these questions, held until the transaction ends, so that none moves meanwhile. */
export async function lockMemories(sql: PoolClient, personId: number, questionIds: readonly number[]): Promise<LockedMemory[]> {
  const { rows } = await sql.query<LockedMemory>(
    `SELECT question_id AS "questionId", stability, difficulty, last_day AS "lastDay", due_day AS "dueDay", reps
     FROM memory WHERE person_id = $1 AND question_id = ANY ($2) ORDER BY question_id FOR UPDATE`,
    [personId, questionIds],
  );
  return rows;
}

export interface PaperAnswer {
  token: string;
  questionId: number;
  revision: number;
  seed: number;
  given: string;
  right: boolean;
  tellTale: string | null;
  /** Null where the memory does not move: it did so on the same day already. */
  rating: number | null;
  answeredAt: Date;
  expectedRecall: number | null;
  before: LockedMemory;
  after: { stability: number | null; difficulty: number | null; lastDay: number | null; dueDay: number | null };
}

/** Adds the answers and moves the memories, which must have been locked before. */
export async function recordPaperAnswers(
  sql: PoolClient,
  of: { personId: number; region: Region; day: number },
  answers: readonly PaperAnswer[],
): Promise<void> {
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
       SELECT * FROM jsonb_to_recordset($4) AS g(token uuid, "questionId" int, revision int, seed int, given text, "right" boolean, "tellTale" text,
         rating int, "answeredAt" timestamptz, "expectedRecall" float8, sb float8, db float8, lb int, sa float8, da float8, la int, ua int)
     ), moved AS (
       UPDATE memory m SET stability = g.sa, difficulty = g.da, last_day = g.la, due_day = g.ua, reps = m.reps + 1
       FROM given g WHERE m.person_id = $1 AND m.question_id = g."questionId" RETURNING m.question_id, m.reps
     )
     INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", tell_tale, rating, day, answered_at,
       expected_recall, stability_after, difficulty_after, due_day_after, reps_after, stability_before, difficulty_before, last_day_before)
     SELECT g.token, $1, g."questionId", g.revision, g.seed, $2, g.given, 'unsaid', g."right", g."tellTale", g.rating, $3, g."answeredAt",
       g."expectedRecall", g.sa, g.da, g.ua, moved.reps, g.sb, g.db, g.lb FROM given g JOIN moved ON moved.question_id = g."questionId"`,
    [of.personId, of.region, of.day, JSON.stringify(rows)],
  );
}
