import type { Db } from '../platform/db.js';
import { headColumns, headTables, sittingColumns } from './columns.js';
import type { PaperHead, SittingRow } from './rows.js';

/** Queries about the papers of classes. */

export interface OpenPaper extends PaperHead {
  /** The candidate's own extra time in this class, in per cent. */
  extraTime: number;
}

/** Papers of a candidate's classes that can be sat now and were not yet. */
export async function openPapers(db: Db, personId: number, now: Date): Promise<OpenPaper[]> {
  const { rows } = await db.pool.query<OpenPaper>(
    `SELECT ${headColumns}, cm.extra_time AS "extraTime" FROM ${headTables} JOIN class_member cm ON cm.class_id = pa.class_id AND cm.person_id = $1
     WHERE pa.opens_at <= $2 AND pa.closes_at > $2
       AND NOT EXISTS (SELECT FROM sitting s WHERE s.paper_id = pa.id AND s.person_id = $1 AND s.handed_in_at IS NOT NULL)
     ORDER BY pa.closes_at`,
    [personId, now],
  );
  return rows;
}

export interface ClassRow {
  classId: number;
  name: string;
  members: number;
}

/** The classes of a tutor; all of them for an administrator, told by null. */
export async function classesOf(db: Db, tutorId: number | null): Promise<ClassRow[]> {
  const { rows } = await db.pool.query<ClassRow>(
    `SELECT c.id AS "classId", c.name, (SELECT count(*)::int FROM class_member m WHERE m.class_id = c.id) AS members FROM study_class c
     WHERE $1::int IS NULL OR EXISTS (SELECT FROM class_tutor t WHERE t.class_id = c.id AND t.person_id = $1) ORDER BY c.name, c.id`,
    [tutorId],
  );
  return rows;
}

export interface SetPaper extends PaperHead {
  members: number;
  begun: number;
  handedIn: number;
}

/** Papers that were set for a tutor's classes, the latest first. */
export async function setPapers(db: Db, tutorId: number | null): Promise<SetPaper[]> {
  const { rows } = await db.pool.query<SetPaper>(
    `SELECT ${headColumns}, (SELECT count(*)::int FROM class_member m WHERE m.class_id = pa.class_id) AS members, s.begun, s."handedIn"
     FROM ${headTables}, LATERAL (SELECT count(*) FILTER (WHERE started_at IS NOT NULL OR handed_in_at IS NOT NULL)::int AS begun,
       count(*) FILTER (WHERE handed_in_at IS NOT NULL)::int AS "handedIn" FROM sitting WHERE paper_id = pa.id) s
     WHERE pa.class_id IS NOT NULL AND ($1::int IS NULL OR EXISTS (SELECT FROM class_tutor t WHERE t.class_id = pa.class_id AND t.person_id = $1))
     ORDER BY pa.made_at DESC`,
    [tutorId],
  );
  return rows;
}

/** A paper that was set for a class of this tutor (any class for null); other papers are not found. */
export async function findSetPaper(db: Db, tutorId: number | null, paperId: string): Promise<PaperHead | null> {
  const { rows } = await db.pool.query<PaperHead>(
    `SELECT ${headColumns} FROM ${headTables} WHERE pa.id = $2 AND pa.class_id IS NOT NULL
       AND ($1::int IS NULL OR EXISTS (SELECT FROM class_tutor t WHERE t.class_id = pa.class_id AND t.person_id = $1))`,
    [tutorId, paperId],
  );
  return rows[0] ?? null;
}

/** One line of a class paper: a member with or without a sitting, or a name without an account. */
export interface RollRow {
  name: string;
  /** Null for somebody who is no member (any more). */
  memberId: number | null;
  /** Per cent, in this class. */
  memberExtraTime: number;
  sitting: SittingRow | null;
  /** Choices saved. */
  answered: number;
}

export async function rollOf(db: Db, paperId: string): Promise<RollRow[]> {
  const { rows } = await db.pool.query<Omit<RollRow, 'sitting'> & { sittingId: string | null }>(
    `SELECT coalesce(p.display_name, s.guest_name) AS name, m.person_id AS "memberId", coalesce(m.extra_time, 0) AS "memberExtraTime", ${sittingColumns},
       (SELECT count(*)::int FROM sitting_answer a WHERE a.sitting_id = s.id AND a.choice IS NOT NULL) AS answered
     FROM (SELECT cm.person_id, cm.extra_time FROM class_member cm JOIN paper pa ON pa.class_id = cm.class_id WHERE pa.id = $1) m
       FULL JOIN (SELECT * FROM sitting WHERE paper_id = $1) s ON s.person_id = m.person_id
       LEFT JOIN person p ON p.id = coalesce(m.person_id, s.person_id)
     ORDER BY lower(coalesce(p.display_name, s.guest_name)), s.id`,
    [paperId],
  );
  return rows.map(({ name, memberId, memberExtraTime, answered, ...sitting }) => {
    return { name, memberId, memberExtraTime, answered, sitting: sitting.sittingId === null ? null : (sitting as unknown as SittingRow) };
  });
}

/** Questions that the class's last two papers asked. */
export async function recentlySet(db: Db, classId: number): Promise<number[]> {
  const { rows } = await db.pool.query<{ questionId: number }>(
    `SELECT DISTINCT i.question_id AS "questionId" FROM paper_item i
     WHERE i.version = 1 AND i.paper_id IN (SELECT id FROM paper WHERE class_id = $1 ORDER BY made_at DESC LIMIT 2)`,
    [classId],
  );
  return rows.map(({ questionId }) => questionId);
}

/** How often each letter was chosen, version by version, of what was handed in. */
export async function choiceCounts(
  db: Db,
  paperId: string,
): Promise<{ version: number; position: number; choice: string | null; count: number }[]> {
  const { rows } = await db.pool.query<{ version: number; position: number; choice: string | null; count: number }>(
    `SELECT s.version, i.position, a.choice, count(*)::int AS count
     FROM sitting s JOIN paper_item i ON i.paper_id = s.paper_id AND i.version = s.version
       LEFT JOIN sitting_answer a ON a.sitting_id = s.id AND a.position = i.position
     WHERE s.paper_id = $1 AND s.handed_in_at IS NOT NULL GROUP BY s.version, i.position, a.choice`,
    [paperId],
  );
  return rows;
}

/** How many had each question right, and the marks of each, of what was handed in. */
export interface PaperMarks {
  rights: number[];
  totals: number[];
}

export async function marksOf(db: Db, paperId: string): Promise<PaperMarks> {
  const { rows } = await db.pool.query<PaperMarks>(
    `SELECT ARRAY(SELECT count(*) FILTER (WHERE a."right")::int FROM sitting s
         JOIN paper_item i ON i.paper_id = s.paper_id AND i.version = s.version
         LEFT JOIN sitting_answer a ON a.sitting_id = s.id AND a.position = i.position
       WHERE s.paper_id = $1 AND s.handed_in_at IS NOT NULL GROUP BY i.question_id) AS rights,
       ARRAY(SELECT "right"::int FROM sitting WHERE paper_id = $1 AND handed_in_at IS NOT NULL) AS totals`,
    [paperId],
  );
  return rows[0] ?? { rights: [], totals: [] };
}

/** The end of the window; running sittings end with it, or, when it is moved out, no sooner than before. */
export async function closeWindow(db: Db, paperId: string, at: Date): Promise<void> {
  await db.pool.query(
    `WITH closed AS (UPDATE paper SET closes_at = greatest($2, opens_at + interval '1 millisecond') WHERE id = $1)
     UPDATE sitting SET deadline_at = $2 WHERE paper_id = $1 AND handed_in_at IS NULL AND deadline_at > $2`,
    [paperId, at],
  );
}

/** Extra time of a member in this class, for this paper's sitting too while it is not handed in. */
export async function setExtraTime(db: Db, classId: number, personId: number, percent: number): Promise<void> {
  await db.pool.query(
    `WITH member AS (UPDATE class_member SET extra_time = $3 WHERE class_id = $1 AND person_id = $2 RETURNING person_id)
     UPDATE sitting s SET extra_time = $3, deadline_at = least(pa.closes_at,
       s.started_at + make_interval(secs => (pa.blueprint->>'minutes')::float8 * 60 * (1 + $3 / 100.0)))
     FROM paper pa, member WHERE pa.id = s.paper_id AND pa.class_id = $1 AND s.person_id = member.person_id AND s.handed_in_at IS NULL`,
    [classId, personId, percent],
  );
}

/** A name without an account, and all of its answers. */
export async function removeGuest(db: Db, paperId: string, sittingId: string): Promise<void> {
  await db.pool.query('DELETE FROM sitting WHERE id = $2 AND paper_id = $1 AND guest_name IS NOT NULL', [paperId, sittingId]);
}

export async function isOfPaper(db: Db, paperId: string, sittingId: string): Promise<boolean> {
  const { rowCount } = await db.pool.query('SELECT FROM sitting WHERE id = $2 AND paper_id = $1', [paperId, sittingId]);
  return rowCount === 1;
}
