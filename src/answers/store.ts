import type { RecordedCertainty } from '../core/questions/schema.js';
import type { Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';

/**
 * The record of answers. An answer and the memory it moves are written by one statement, so that neither can be there
 * without the other, and a crash leaves both or none. It is the one place where this feature touches a memory row.
 */

export interface AnswerRow {
  token: string;
  personId: number;
  questionId: number;
  revision: number;
  seed: number;
  region: Region;
  given: string;
  certainty: RecordedCertainty;
  right: boolean;
  /** The share of a question's parts that were right; null where there are no parts. */
  score: number | null;
  tellTale: string | null;
  rating: number | null;
  day: number;
  answeredAt: Date;
  expectedRecall: number | null;
}

export interface MemoryBefore {
  stability: number | null;
  difficulty: number | null;
  lastDay: number | null;
  dueDay: number | null;
  reps: number;
}

/** What the memory row becomes; for an answer that does not move the memory the numbers are those from before. */
export interface MemoryAfter {
  stability: number | null;
  difficulty: number | null;
  lastDay: number | null;
  dueDay: number | null;
  retryDay: number | null;
  surelyWrong: boolean;
}

/** The one fresh draw to add to the round after a first wrong number. */
export interface FreshItem {
  token: string;
  seed: number;
}

const recordText = `
  WITH moved AS (
    UPDATE memory SET stability = $15, difficulty = $16, last_day = $17, due_day = $18, retry_day = $19, surely_wrong = $20, reps = reps + 1
    WHERE person_id = $2 AND question_id = $3 AND reps = $21
    RETURNING reps
  ), fresh AS (
    INSERT INTO round_item (token, round_id, position, question_id, revision, seed, retry_of)
    SELECT $25, i.round_id, i.position + 1, i.question_id, i.revision, $26, i.token
    FROM round_item i, moved WHERE i.token = $1 AND $25::uuid IS NOT NULL
  )
  INSERT INTO answer (token, person_id, question_id, revision, seed, region, given, certainty, "right", tell_tale, rating, day, answered_at,
    expected_recall, stability_after, difficulty_after, due_day_after, reps_after, stability_before, difficulty_before, last_day_before, score)
  SELECT $1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16, $18, moved.reps, $22, $23, $24, $27 FROM moved`;

/** @returns `moved-meanwhile` when the memory is no longer as it was read; `known` when this token was answered before. */
export async function recordAnswer(
  db: Db,
  a: AnswerRow,
  before: MemoryBefore,
  after: MemoryAfter,
  fresh: FreshItem | null,
): Promise<'recorded' | 'moved-meanwhile' | 'known'> {
  const values = [
    ...[
      a.token,
      a.personId,
      a.questionId,
      a.revision,
      a.seed,
      a.region,
      a.given,
      a.certainty,
      a.right,
      a.tellTale,
      a.rating,
      a.day,
      a.answeredAt,
    ],
    ...[a.expectedRecall, after.stability, after.difficulty, after.lastDay, after.dueDay, after.retryDay, after.surelyWrong],
    ...[before.reps, before.stability, before.difficulty, before.lastDay, fresh?.token ?? null, fresh?.seed ?? null, a.score],
  ];
  try {
    const { rowCount } = await db.pool.query({ name: 'answer-record', text: recordText, values });
    return rowCount === 1 ? 'recorded' : 'moved-meanwhile';
  } catch (error) {
    // 23505: unique violation. The token is the answer's id, so this very answer is in the database already.
    if ((error as { code?: string }).code === '23505') return 'known';
    throw error;
  }
}

export interface AnsweredToday {
  options: number;
  numbers: number;
  /** Questions met for the first time. */
  met: number;
}

/** What a person answered on a day: how many of each sort, and how many questions were new. */
export async function answeredOn(db: Db, personId: number, day: number): Promise<AnsweredToday> {
  const { rows } = await db.pool.query<AnsweredToday>({
    name: 'answers-of-day',
    text: `SELECT count(*) FILTER (WHERE q.kind <> 'numeric')::int AS options, count(*) FILTER (WHERE q.kind = 'numeric')::int AS numbers,
             count(*) FILTER (WHERE a.stability_before IS NULL AND a.rating IS NOT NULL)::int AS met
           FROM answer a JOIN question q ON q.id = a.question_id WHERE a.person_id = $1 AND a.day = $2 AND a.answered_at > $3`,
    // By the index on time: a day of anybody's calendar lies within these.
    values: [personId, day, new Date((day - 1) * 86_400_000)],
  });
  return rows[0] as AnsweredToday;
}

export interface RecordedAnswer {
  token: string;
  personId: number;
  questionId: number;
  revision: number;
  seed: number;
  region: Region;
  given: string;
  certainty: RecordedCertainty;
  right: boolean;
  score: number | null;
  rating: number | null;
  day: number;
  dueDayAfter: number | null;
  roundId: string | null;
  position: number | null;
  retryOf: string | null;
  freshToken: string | null;
  freshAnswered: boolean;
}

const answerColumns = `a.token, a.person_id AS "personId", a.question_id AS "questionId", a.revision, a.seed, a.region, a.given, a.certainty, a."right", a.score,
  a.rating, a.day, a.due_day_after AS "dueDayAfter", i.round_id AS "roundId", i.position, i.retry_of AS "retryOf",
  f.token AS "freshToken", fa.token IS NOT NULL AS "freshAnswered"`;
const answerTables = `answer a LEFT JOIN round_item i ON i.token = a.token LEFT JOIN round_item f ON f.retry_of = a.token
  LEFT JOIN answer fa ON fa.person_id = a.person_id AND fa.token = f.token`;

export async function findAnswer(db: Db, personId: number, token: string): Promise<RecordedAnswer | null> {
  const { rows } = await db.pool.query<RecordedAnswer>({
    name: 'answer-find',
    text: `SELECT ${answerColumns} FROM ${answerTables} WHERE a.token = $1 AND a.person_id = $2`,
    values: [token, personId],
  });
  return rows[0] ?? null;
}

export async function answersOfRound(db: Db, personId: number, roundId: string): Promise<RecordedAnswer[]> {
  const { rows } = await db.pool.query<RecordedAnswer>(
    `SELECT ${answerColumns} FROM ${answerTables} WHERE i.round_id = $1 AND a.person_id = $2 ORDER BY i.position`,
    [roundId, personId],
  );
  return rows;
}
