import type { PoolClient } from 'pg';
import type { Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';

/** Queries about memories and rounds. */

/** Rows for every question of every pack that the person's region has and the person has not: in order, all at once. */
export async function enrol(sql: PoolClient, personId: number, region: Region): Promise<void> {
  await sql.query(
    `INSERT INTO memory (person_id, question_id, topic_id)
     SELECT $1, q.id, q.topic_id FROM question q WHERE NOT q.retired AND $2 = ANY (q.regions) ORDER BY q.id
     ON CONFLICT DO NOTHING`,
    [personId, region],
  );
}

/** After a pack has been loaded: its new questions for everybody, and topics that moved. */
export async function enrolAll(sql: PoolClient, packId: number): Promise<void> {
  await sql.query(
    `INSERT INTO memory (person_id, question_id, topic_id)
     SELECT p.id, q.id, q.topic_id FROM person p JOIN question q ON q.pack_id = $1 AND NOT q.retired AND p.region = ANY (q.regions)
     WHERE p.role = 'candidate' ORDER BY p.id, q.id ON CONFLICT DO NOTHING`,
    [packId],
  );
  await sql.query(
    'UPDATE memory m SET topic_id = q.topic_id FROM question q WHERE q.id = m.question_id AND q.pack_id = $1 AND m.topic_id <> q.topic_id',
    [packId],
  );
}

export interface MemoryOfQuestion {
  questionId: number;
  stability: number | null;
  difficulty: number | null;
  lastDay: number | null;
  dueDay: number | null;
  surelyWrong: boolean;
}

/** What somebody knows of each question, in no order. */
export async function readMemories(db: Db, personId: number): Promise<MemoryOfQuestion[]> {
  const { rows } = await db.pool.query<MemoryOfQuestion>({
    name: 'study-memories',
    text: `SELECT question_id AS "questionId", stability, difficulty, last_day AS "lastDay", due_day AS "dueDay", surely_wrong AS "surelyWrong"
           FROM memory WHERE person_id = $1`,
    values: [personId],
  });
  return rows;
}

export interface NewRound {
  id: string;
  personId: number;
  minutes: number;
  day: number;
  region: Region;
  now: Date;
  items: { token: string; position: number; questionId: number; revision: number; seed: number }[];
}

/** A round and its questions in one statement. A round whose id is there already stays as it is. */
export async function addRound(db: Db, round: NewRound): Promise<void> {
  await db.pool.query(
    `WITH made AS (
       INSERT INTO round (id, person_id, minutes, day, region, started_at) VALUES ($1, $2, $3, $4, $5, $6) ON CONFLICT (id) DO NOTHING RETURNING id
     )
     INSERT INTO round_item (token, round_id, position, question_id, revision, seed)
     SELECT i.token, made.id, i.position, i."questionId", i.revision, i.seed
     FROM made, jsonb_to_recordset($7) AS i(token uuid, position int, "questionId" int, revision int, seed int)`,
    [round.id, round.personId, round.minutes, round.day, round.region, round.now, JSON.stringify(round.items)],
  );
}

export interface ItemRow {
  token: string;
  roundId: string;
  position: number;
  questionId: number;
  revision: number;
  seed: number;
  retryOf: string | null;
  region: Region;
  /** How many questions the round has, fresh draws not counted, and which of them this is. */
  total: number;
  place: number;
}

const itemColumns = `i.token, i.round_id AS "roundId", i.position, i.question_id AS "questionId", i.revision, i.seed, i.retry_of AS "retryOf", r.region,
  (SELECT count(*)::int FROM round_item c WHERE c.round_id = r.id AND c.retry_of IS NULL) AS total,
  (SELECT count(*)::int FROM round_item c WHERE c.round_id = r.id AND c.retry_of IS NULL AND c.position <= i.position) AS place`;

/** The first question of a round that has no answer yet. */
export async function nextItem(db: Db, personId: number, roundId: string): Promise<ItemRow | null> {
  const { rows } = await db.pool.query<ItemRow>({
    name: 'round-next',
    text: `SELECT ${itemColumns} FROM round r JOIN round_item i ON i.round_id = r.id LEFT JOIN answer a ON a.person_id = r.person_id AND a.token = i.token
           WHERE r.id = $1 AND r.person_id = $2 AND a.token IS NULL ORDER BY i.position LIMIT 1`,
    values: [roundId, personId],
  });
  return rows[0] ?? null;
}

export interface ItemWithMemory extends ItemRow {
  stability: number | null;
  difficulty: number | null;
  lastDay: number | null;
  dueDay: number | null;
  reps: number;
  retryDay: number | null;
  surelyWrong: boolean;
  /** Of the candidate's plan. */
  examDay: number | null;
  answered: boolean;
}

/** What an answer needs: the question as asked, and the memory it will move. */
export async function itemWithMemory(db: Db, personId: number, token: string): Promise<ItemWithMemory | null> {
  const { rows } = await db.pool.query<ItemWithMemory>({
    name: 'round-item',
    text: `SELECT i.token, i.round_id AS "roundId", i.position, i.question_id AS "questionId", i.revision, i.seed, i.retry_of AS "retryOf", r.region,
             0 AS total, 0 AS place,
             m.stability, m.difficulty, m.last_day AS "lastDay", m.due_day AS "dueDay", m.reps, m.retry_day AS "retryDay",
             m.surely_wrong AS "surelyWrong", s.exam_day AS "examDay", EXISTS (SELECT FROM answer a WHERE a.person_id = r.person_id AND a.token = i.token) AS answered
           FROM round_item i JOIN round r ON r.id = i.round_id JOIN memory m ON m.person_id = r.person_id AND m.question_id = i.question_id
             LEFT JOIN study_plan s ON s.person_id = r.person_id
           WHERE i.token = $1 AND r.person_id = $2`,
    values: [token, personId],
  });
  return rows[0] ?? null;
}

/** A question of a round with its place, for showing it again. */
export async function itemByToken(db: Db, personId: number, token: string): Promise<ItemRow | null> {
  const { rows } = await db.pool.query<ItemRow>({
    name: 'round-place',
    text: `SELECT ${itemColumns} FROM round_item i JOIN round r ON r.id = i.round_id WHERE i.token = $1 AND r.person_id = $2`,
    values: [token, personId],
  });
  return rows[0] ?? null;
}

export async function roundExists(db: Db, personId: number, roundId: string): Promise<boolean> {
  return (await db.prisma.round.count({ where: { id: roundId, personId } })) > 0;
}

/** The latest round of this day that has questions without an answer. */
export async function openRound(db: Db, personId: number, day: number): Promise<{ id: string; left: number } | null> {
  const { rows } = await db.pool.query<{ id: string; left: number }>(
    `SELECT r.id, count(*)::int AS left FROM round r JOIN round_item i ON i.round_id = r.id LEFT JOIN answer a ON a.person_id = r.person_id AND a.token = i.token
     WHERE r.person_id = $1 AND r.day = $2 AND a.token IS NULL
       AND r.started_at = (SELECT max(started_at) FROM round WHERE person_id = $1)
     GROUP BY r.id LIMIT 1`,
    [personId, day],
  );
  return rows[0] ?? null;
}
