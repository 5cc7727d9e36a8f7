import type { Db } from '../platform/db.js';
import { answerColumns, headColumns, headTables, itemColumns } from './columns.js';
import type { EveningHead, EveningItemRow, OwnAnswer } from './rows.js';

/** Queries that read evenings: a tutor's by their class, a candidate's by membership. */

/** The evenings of a class: those that run, those that are ready, those that are over, the latest first. */
export async function listEvenings(db: Db, classId: number): Promise<EveningHead[]> {
  const { rows } = await db.pool.query<EveningHead>(
    `SELECT ${headColumns} FROM ${headTables} WHERE e.class_id = $1
     ORDER BY e.ended_at IS NOT NULL, e.place = 0, coalesce(e.ended_at, e.moved_at) DESC, e.id`,
    [classId],
  );
  return rows;
}

export async function findEvening(db: Db, classId: number, eveningId: string): Promise<EveningHead | null> {
  const { rows } = await db.pool.query<EveningHead>(`SELECT ${headColumns} FROM ${headTables} WHERE e.id = $2 AND e.class_id = $1`, [
    classId,
    eveningId,
  ]);
  return rows[0] ?? null;
}

export async function itemsOf(db: Db, eveningId: string): Promise<EveningItemRow[]> {
  const { rows } = await db.pool.query<EveningItemRow>(
    `SELECT ${itemColumns} FROM evening_item i WHERE i.evening_id = $1 ORDER BY i.position`,
    [eveningId],
  );
  return rows;
}

/** How many have answered a question on a phone. */
export async function answeredCount(db: Db, eveningId: string, position: number): Promise<number> {
  const { rows } = await db.pool.query<{ count: number }>({
    name: 'evening-answered',
    text: 'SELECT count(*)::int AS count FROM evening_answer WHERE evening_id = $1 AND position = $2',
    values: [eveningId, position],
  });
  return rows[0]?.count ?? 0;
}

/** How often each letter of each question was chosen on a phone. */
export async function choiceCounts(db: Db, eveningId: string): Promise<{ position: number; choice: string; count: number }[]> {
  const { rows } = await db.pool.query<{ position: number; choice: string; count: number }>(
    'SELECT position, choice, count(*)::int AS count FROM evening_answer WHERE evening_id = $1 GROUP BY position, choice',
    [eveningId],
  );
  return rows;
}

/** An evening as one candidate finds it. */
export interface JoinedRow extends EveningHead {
  /** False for somebody who answered in it and is in the class no more. */
  member: boolean;
  /** The question before the class; null before the first. */
  item: EveningItemRow | null;
  own: OwnAnswer | null;
}

/** For members of its class, and for those who were when they answered; to anybody else it is not there. */
export async function findJoined(db: Db, personId: number, eveningId: string, position: number | null): Promise<JoinedRow | null> {
  const { rows } = await db.pool.query<JoinedRow>({
    name: 'evening-joined',
    text: `SELECT ${headColumns}, j.member,
         (SELECT to_jsonb(x) FROM (SELECT ${itemColumns} FROM evening_item i WHERE i.evening_id = e.id AND i.position = coalesce($3, e.place)) x) AS item,
         (SELECT to_jsonb(x) FROM (SELECT ${answerColumns} FROM evening_answer a
            WHERE a.evening_id = e.id AND a.position = coalesce($3, e.place) AND a.person_id = $2) x) AS own
       FROM ${headTables}, LATERAL (SELECT EXISTS (SELECT FROM class_member m WHERE m.class_id = e.class_id AND m.person_id = $2) AS member) j
       WHERE e.id = $1 AND (j.member OR EXISTS (SELECT FROM evening_answer a WHERE a.evening_id = e.id AND a.person_id = $2))`,
    values: [eveningId, personId, position],
  });
  return rows[0] ?? null;
}

/** The evenings that somebody can go to: those that run before those that are only ready. */
export async function openEvenings(db: Db, personId: number): Promise<EveningHead[]> {
  const { rows } = await db.pool.query<EveningHead>({
    name: 'evening-open',
    text: `SELECT ${headColumns} FROM class_member cm JOIN evening e ON e.class_id = cm.class_id JOIN study_class c ON c.id = e.class_id
           WHERE cm.person_id = $1 AND e.ended_at IS NULL ORDER BY e.place = 0, e.moved_at DESC, e.id`,
    values: [personId],
  });
  return rows;
}

/** What somebody answered in an evening, with what was asked. */
export async function ownAnswers(db: Db, personId: number, eveningId: string): Promise<(EveningItemRow & { own: OwnAnswer | null })[]> {
  const { rows } = await db.pool.query<EveningItemRow & { own: OwnAnswer | null }>(
    `SELECT ${itemColumns}, (SELECT to_jsonb(x) FROM (SELECT ${answerColumns} FROM evening_answer a
       WHERE a.evening_id = i.evening_id AND a.position = i.position AND a.person_id = $2) x) AS own
     FROM evening_item i WHERE i.evening_id = $1 ORDER BY i.position`,
    [eveningId, personId],
  );
  return rows;
}
