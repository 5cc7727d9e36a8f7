import type { Db } from '../platform/db.js';
import type { Planner } from '../study/index.js';

/** Queries for the calendar, which is asked for by a program that is not signed in. */

/** The candidate whose calendar has this key; null when it has another by now. */
export async function findCalendarOwner(db: Db, personId: number, calendarKey: number): Promise<Planner | null> {
  const { rows } = await db.pool.query<Planner>(
    `SELECT p.id, p.time_zone AS "timeZone", p.region
     FROM person p JOIN study_plan s ON s.person_id = p.id WHERE p.id = $1 AND s.calendar_key = $2`,
    [personId, calendarKey],
  );
  return rows[0] ?? null;
}
