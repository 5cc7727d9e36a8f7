import type { Db } from '../platform/db.js';

/** Queries about classes. */

export interface MemberRow {
  classId: number;
  className: string;
  examOn: string | null;
  personId: number | null;
  name: string | null;
  timeZone: string | null;
  answers: number;
  right: number;
  lastSeenAt: Date | null;
  /** Days on which questions come back, in the candidate's own calendar: null where never asked. */
  dueDays: number[] | null;
  surelyWrong: number;
}

/** Every class this tutor has (all of them for an administrator) with its members. */
export async function readClasses(db: Db, tutorId: number | null): Promise<MemberRow[]> {
  const { rows } = await db.pool.query<MemberRow>(
    `SELECT c.id AS "classId", c.name AS "className", c.exam_on AS "examOn", p.id AS "personId", p.display_name AS name, p.time_zone AS "timeZone",
       p.last_seen_at AS "lastSeenAt", a.answers, a."right", m."dueDays", m."surelyWrong"
     FROM study_class c
       LEFT JOIN class_member cm ON cm.class_id = c.id
       LEFT JOIN person p ON p.id = cm.person_id
       LEFT JOIN LATERAL (SELECT count(*)::int AS answers, count(*) FILTER (WHERE "right")::int AS "right" FROM answer WHERE person_id = p.id) a ON true
       LEFT JOIN LATERAL (SELECT array_agg(due_day) FILTER (WHERE due_day IS NOT NULL) AS "dueDays", count(*) FILTER (WHERE surely_wrong)::int AS "surelyWrong"
                          FROM memory WHERE person_id = p.id) m ON true
     WHERE $1::int IS NULL OR EXISTS (SELECT FROM class_tutor t WHERE t.class_id = c.id AND t.person_id = $1)
     ORDER BY c.name, c.id, m."surelyWrong" DESC NULLS LAST, p.last_seen_at NULLS FIRST, p.display_name`,
    [tutorId],
  );
  return rows;
}

export interface MistakeRow {
  classId: number;
  questionId: number;
  code: string;
  stem: string;
  names: string[];
}

/** By class: questions that members were sure of and wrong on, and have not had right since; those of most members first. */
export async function readMistakes(db: Db, tutorId: number | null): Promise<MistakeRow[]> {
  const { rows } = await db.pool.query<MistakeRow>(
    `SELECT cm.class_id AS "classId", q.id AS "questionId", q.code, coalesce(r.body->>'stem', r.body->>'title', '') AS stem,
       array_agg(p.display_name ORDER BY p.display_name) AS names
     FROM class_member cm JOIN person p ON p.id = cm.person_id JOIN memory m ON m.person_id = p.id AND m.surely_wrong
       JOIN question q ON q.id = m.question_id AND NOT q.retired
       JOIN question_revision r ON r.question_id = q.id AND r.revision = q.current_revision
     WHERE $1::int IS NULL OR EXISTS (SELECT FROM class_tutor t WHERE t.class_id = cm.class_id AND t.person_id = $1)
     GROUP BY cm.class_id, q.id, r.body ORDER BY count(*) DESC, q.code`,
    [tutorId],
  );
  return rows;
}
