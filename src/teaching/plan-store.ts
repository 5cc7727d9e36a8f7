import type { RecordedCertainty } from '../core/questions/schema.js';
import type { Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';

/** Queries of the session plan and of one cell of the grid. */

export interface ObjectiveRow {
  code: string;
  title: string;
  topic: string;
  topicTitle: string;
  /** As the pack has it: checked when it was loaded. */
  body: unknown;
  cautions: unknown;
}

export async function objectivesOf(db: Db, pack: string, codes: readonly string[]): Promise<ObjectiveRow[]> {
  const { rows } = await db.pool.query<ObjectiveRow>(
    `SELECT o.code, o.title, t.code AS topic, t.title AS "topicTitle", o.body, p.cautions
     FROM objective o JOIN topic t ON t.id = o.topic_id JOIN pack p ON p.id = t.pack_id WHERE p.slug = $1 AND o.code = ANY ($2)`,
    [pack, codes],
  );
  return rows;
}

export interface LastAnswerRow {
  personId: number;
  questionId: number;
  objective: string;
  revision: number;
  region: Region;
  seed: number;
  given: string;
  certainty: RecordedCertainty;
  right: boolean;
  tellTale: string | null;
}

/** What each member answered last to each question of these objectives. */
export async function lastAnswers(db: Db, classId: number, pack: string, objectives: readonly string[]): Promise<LastAnswerRow[]> {
  const { rows } = await db.pool.query<LastAnswerRow>({
    name: 'class-last-answers',
    text: `SELECT DISTINCT ON (a.person_id, a.question_id) a.person_id AS "personId", a.question_id AS "questionId", o.code AS objective,
             a.revision, a.region, a.seed, a.given, a.certainty, a."right", a.tell_tale AS "tellTale"
           FROM class_member m JOIN answer a ON a.person_id = m.person_id JOIN question q ON q.id = a.question_id AND NOT q.retired
             JOIN objective o ON o.id = q.objective_id JOIN pack k ON k.id = q.pack_id
           WHERE m.class_id = $1 AND k.slug = $2 AND o.code = ANY ($3)
           ORDER BY a.person_id, a.question_id, a.answered_at DESC`,
    values: [classId, pack, objectives],
  });
  return rows;
}

export interface CellQuestion {
  questionId: number;
  code: string;
  stem: string;
  objective: string;
  revision: number;
  stability: number | null;
  difficulty: number | null;
  lastDay: number | null;
  surelyWrong: boolean;
}

/** Every question of a topic that can be asked where somebody lives. */
export async function cellQuestions(db: Db, personId: number, pack: string, topic: string): Promise<CellQuestion[]> {
  const { rows } = await db.pool.query<CellQuestion>(
    `SELECT q.id AS "questionId", q.code, coalesce(r.body->>'stem', r.body->>'title', '') AS stem, o.code AS objective, q.current_revision AS revision,
       m.stability, m.difficulty, m.last_day AS "lastDay", m.surely_wrong AS "surelyWrong"
     FROM person p JOIN memory m ON m.person_id = p.id JOIN question q ON q.id = m.question_id AND NOT q.retired AND p.region = ANY (q.regions)
       JOIN question_revision r ON r.question_id = q.id AND r.revision = q.current_revision
       JOIN objective o ON o.id = q.objective_id JOIN topic t ON t.id = q.topic_id JOIN pack k ON k.id = q.pack_id
     WHERE p.id = $1 AND k.slug = $2 AND t.code = $3 ORDER BY o.code, q.code`,
    [personId, pack, topic],
  );
  return rows;
}

export interface CellAnswer {
  questionId: number;
  revision: number;
  seed: number;
  region: Region;
  given: string;
  certainty: RecordedCertainty;
  right: boolean;
  day: number;
}

/** All answers of somebody in a topic, the latest first. */
export async function cellAnswers(db: Db, personId: number, pack: string, topic: string): Promise<CellAnswer[]> {
  const { rows } = await db.pool.query<CellAnswer>(
    `SELECT a.question_id AS "questionId", a.revision, a.seed, a.region, a.given, a.certainty, a."right", a.day
     FROM answer a JOIN question q ON q.id = a.question_id JOIN topic t ON t.id = q.topic_id JOIN pack k ON k.id = q.pack_id
     WHERE a.person_id = $1 AND k.slug = $2 AND t.code = $3 ORDER BY a.answered_at DESC, a.token`,
    [personId, pack, topic],
  );
  return rows;
}
