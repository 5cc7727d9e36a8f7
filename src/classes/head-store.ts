import type { Db } from '../platform/db.js';

/** Queries about a class itself. */

export interface ClassHead {
  classId: number;
  name: string;
  /** 2026-12-08, or null. */
  examOn: string | null;
  /** Slug of the pack and id of the blueprint, parted by a stroke; null until one is chosen. */
  paper: string | null;
  /** 0 for Sunday to 6 for Saturday; null with `meetsAt` where there is no fixed day. */
  meetsOn: number | null;
  /** 19:30 */
  meetsAt: string | null;
  timeZone: string;
  members: number;
  /** Display names. */
  tutors: string[];
  ended: boolean;
}

const headColumns = `c.id AS "classId", c.name, to_char(c.exam_on, 'YYYY-MM-DD') AS "examOn", c.paper, c.meets_on AS "meetsOn", c.meets_at AS "meetsAt",
  c.time_zone AS "timeZone", (SELECT count(*)::int FROM class_member m WHERE m.class_id = c.id) AS members,
  ARRAY(SELECT p.display_name FROM class_tutor t JOIN person p ON p.id = t.person_id WHERE t.class_id = c.id ORDER BY p.display_name) AS tutors,
  c.ended_at IS NOT NULL AS ended`;

/** For a tutor of it; for anybody who may see classes with null. */
export async function findClass(db: Db, tutorId: number | null, classId: number): Promise<ClassHead | null> {
  const { rows } = await db.pool.query<ClassHead>(
    `SELECT ${headColumns} FROM study_class c
     WHERE c.id = $2 AND ($1::int IS NULL OR EXISTS (SELECT FROM class_tutor t WHERE t.class_id = c.id AND t.person_id = $1))`,
    [tutorId, classId],
  );
  return rows[0] ?? null;
}

/** The classes of a tutor, or all with null: those that run first. */
export async function listClasses(db: Db, tutorId: number | null): Promise<ClassHead[]> {
  const { rows } = await db.pool.query<ClassHead>(
    `SELECT ${headColumns} FROM study_class c
     WHERE $1::int IS NULL OR EXISTS (SELECT FROM class_tutor t WHERE t.class_id = c.id AND t.person_id = $1)
     ORDER BY c.ended_at IS NOT NULL, c.name, c.id`,
    [tutorId],
  );
  return rows;
}
