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
