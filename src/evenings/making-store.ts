import type { PoolClient } from 'pg';
import type { ClassFigure } from '../core/evenings/choose.js';
import type { Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';

/** Queries of making an evening. */

export interface NewEvening {
  eveningId: string;
  classId: number;
  title: string;
  region: Region;
  madeBy: number;
  madeAt: Date;
  items: readonly { questionId: number; revision: number; seed: number }[];
}

/** Writes an evening with its questions; one that is there already stays as it is. */
export async function addEvening(sql: PoolClient, evening: NewEvening): Promise<void> {
  const { eveningId, classId, title, region, madeBy, madeAt, items } = evening;
  const { rowCount } = await sql.query(
    `INSERT INTO evening (id, class_id, title, region, made_by, made_at, moved_at) VALUES ($1, $2, $3, $4, $5, $6, $6) ON CONFLICT DO NOTHING`,
    [eveningId, classId, title, region, madeBy, madeAt],
  );
  if (rowCount === 0) return;
  const rows = items.map((item, index) => ({ ...item, position: index + 1 }));
  await sql.query(
    `INSERT INTO evening_item (evening_id, position, question_id, revision, seed, hands)
     SELECT $1, g.position, g."questionId", g.revision, g.seed, '{}'
     FROM jsonb_to_recordset($2) AS g(position int, "questionId" int, revision int, seed int)`,
    [eveningId, JSON.stringify(rows)],
  );
}

export interface CodeRow {
  questionId: number;
  code: string;
}

/** The codes of all questions; those of one pack, if it is named, first. */
export async function codesOf(db: Db, pack: string | null): Promise<CodeRow[]> {
  const { rows } = await db.pool.query<CodeRow>(
    `SELECT q.id AS "questionId", q.code FROM question q JOIN pack p ON p.id = q.pack_id
     ORDER BY p.slug IS DISTINCT FROM $1, p.id, q.id`,
    [pack],
  );
  return rows;
}

/** What the members of a class did with each question that any of them has met. */
export async function classFigures(db: Db, classId: number): Promise<Map<number, ClassFigure>> {
  const { rows } = await db.pool.query<ClassFigure & { questionId: number }>(
    `SELECT f."questionId", sum(f.sure)::int AS sure, sum(f.answers)::int AS answers, sum(f.wrong)::int AS wrong FROM (
       SELECT a.question_id AS "questionId", 0 AS sure, count(*) AS answers, count(*) FILTER (WHERE NOT a."right") AS wrong
       FROM class_member cm JOIN answer a ON a.person_id = cm.person_id WHERE cm.class_id = $1 GROUP BY a.question_id
       UNION ALL
       SELECT m.question_id, count(*), 0, 0 FROM class_member cm JOIN memory m ON m.person_id = cm.person_id AND m.surely_wrong
       WHERE cm.class_id = $1 GROUP BY m.question_id
     ) f GROUP BY f."questionId"`,
    [classId],
  );
  return new Map(rows.map(({ questionId, ...figure }) => [questionId, figure]));
}

/** Questions of the class's last evening that was begun. */
export async function recentlyHeld(db: Db, classId: number): Promise<number[]> {
  const { rows } = await db.pool.query<{ questionId: number }>(
    `SELECT DISTINCT i.question_id AS "questionId" FROM evening_item i
     WHERE i.evening_id = (SELECT id FROM evening WHERE class_id = $1 AND place > 0 ORDER BY moved_at DESC, id LIMIT 1)`,
    [classId],
  );
  return rows.map(({ questionId }) => questionId);
}

/** Where most members live; null for a class without any. */
export async function usualRegion(db: Db, classId: number): Promise<Region | null> {
  const { rows } = await db.pool.query<{ region: Region }>(
    `SELECT p.region FROM class_member cm JOIN person p ON p.id = cm.person_id WHERE cm.class_id = $1
     GROUP BY p.region ORDER BY count(*) DESC, p.region LIMIT 1`,
    [classId],
  );
  return rows[0]?.region ?? null;
}
