import type { PlanSettings } from '../core/plan/settings.js';
import type { Db } from '../platform/db.js';

/** Queries about a candidate's plan. */

export interface PlanRow extends PlanSettings {
  paper: string | null;
  calendarKey: number;
}

export async function findPlan(db: Db, personId: number): Promise<PlanRow | null> {
  const { rows } = await db.pool.query<PlanRow>({
    name: 'plan-find',
    text: `SELECT exam_day AS "examDay", minutes, weekdays_off AS "weekdaysOff", days_off AS "daysOff", paper, calendar_key AS "calendarKey"
           FROM study_plan WHERE person_id = $1`,
    values: [personId],
  });
  return rows[0] ?? null;
}

export async function savePlan(db: Db, personId: number, plan: PlanSettings & { paper: string | null }, now: Date): Promise<void> {
  await db.pool.query(
    `INSERT INTO study_plan (person_id, exam_day, minutes, weekdays_off, days_off, paper, saved_at) VALUES ($1, $2, $3, $4, $5, $6, $7)
     ON CONFLICT (person_id) DO UPDATE SET exam_day = excluded.exam_day, minutes = excluded.minutes, weekdays_off = excluded.weekdays_off,
       days_off = excluded.days_off, paper = excluded.paper, saved_at = excluded.saved_at`,
    [personId, plan.examDay, plan.minutes, plan.weekdaysOff, plan.daysOff, plan.paper, now],
  );
}

/** From now on another address leads to the calendar. */
export async function renewCalendar(db: Db, personId: number): Promise<void> {
  await db.pool.query('UPDATE study_plan SET calendar_key = calendar_key + 1 WHERE person_id = $1', [personId]);
}
