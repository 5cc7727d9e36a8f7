import type { Db } from '../platform/db.js';

/** Queries of the class grid. */

export interface CellRow {
  personId: number;
  topic: string;
  /** Questions of the topic that can be asked where this member lives. */
  of: number;
  met: number;
  /** Mean chance to recall those that were met; null when none was. */
  recall: number | null;
  answers: number;
  surelyWrong: number;
}

/**
 * Members by topics of one pack in a single pass over their memories, which lie together.
 * @param days the day on which each member would recall, in that member's own calendar
 */
export async function cellsOf(
  db: Db,
  members: readonly { personId: number; day: number }[],
  pack: string,
  curve: { factor: number; decay: number },
): Promise<CellRow[]> {
  const { rows } = await db.pool.query<CellRow>({
    name: 'class-cells',
    text: `SELECT m.person_id AS "personId", t.code AS topic, count(*)::int AS of, count(m.stability)::int AS met,
             avg(power(1 + $4::float8 * greatest(0, w.day - m.last_day) / m.stability, $5::float8)) AS recall,
             sum(m.reps)::int AS answers, count(*) FILTER (WHERE m.surely_wrong)::int AS "surelyWrong"
           FROM unnest($1::int[], $2::int[]) AS w(id, day) JOIN person p ON p.id = w.id JOIN memory m ON m.person_id = w.id
             JOIN question q ON q.id = m.question_id AND NOT q.retired AND p.region = ANY (q.regions)
             JOIN pack k ON k.id = q.pack_id AND k.slug = $3 JOIN topic t ON t.id = q.topic_id
           GROUP BY m.person_id, t.code`,
    values: [members.map(({ personId }) => personId), members.map(({ day }) => day), pack, curve.factor, curve.decay],
  });
  return rows;
}

export interface TopicRow {
  code: string;
  title: string;
}

/** In the order of the syllabus. */
export async function topicsOf(db: Db, pack: string): Promise<TopicRow[]> {
  const { rows } = await db.pool.query<TopicRow>({
    name: 'class-topics',
    text: 'SELECT t.code, t.title FROM topic t JOIN pack p ON p.id = t.pack_id WHERE p.slug = $1 ORDER BY t.position',
    values: [pack],
  });
  return rows;
}

export interface MistakeRow {
  questionId: number;
  code: string;
  stem: string;
  names: string[];
}

/** Questions that members were sure of and wrong on, and have not had right since; those of most members first. */
export async function surelyWrongOf(db: Db, classId: number): Promise<MistakeRow[]> {
  const { rows } = await db.pool.query<MistakeRow>({
    name: 'class-surely-wrong',
    text: `SELECT q.id AS "questionId", q.code, coalesce(r.body->>'stem', r.body->>'title', '') AS stem,
             array_agg(p.display_name ORDER BY p.display_name) AS names
           FROM class_member cm JOIN person p ON p.id = cm.person_id JOIN memory m ON m.person_id = p.id AND m.surely_wrong
             JOIN question q ON q.id = m.question_id AND NOT q.retired
             JOIN question_revision r ON r.question_id = q.id AND r.revision = q.current_revision
           WHERE cm.class_id = $1 GROUP BY q.id, r.body ORDER BY count(*) DESC, q.code`,
    values: [classId],
  });
  return rows;
}

export interface ClassLine {
  classId: number;
  /** Members, those not here for a week, and those who have never answered. */
  away: number;
  never: number;
  surelyWrong: number;
}

/** What the first page says of each class. @param since whoever was last here before then is away */
export async function linesOf(db: Db, classIds: readonly number[], since: Date): Promise<ClassLine[]> {
  const { rows } = await db.pool.query<ClassLine>(
    `SELECT cm.class_id AS "classId", count(*) FILTER (WHERE p.last_seen_at < $2)::int AS away, count(*) FILTER (WHERE p.last_seen_at IS NULL)::int AS never,
       count(*) FILTER (WHERE EXISTS (SELECT FROM memory m WHERE m.person_id = p.id AND m.surely_wrong))::int AS "surelyWrong"
     FROM class_member cm JOIN person p ON p.id = cm.person_id WHERE cm.class_id = ANY ($1) GROUP BY cm.class_id`,
    [classIds, since],
  );
  return rows;
}
