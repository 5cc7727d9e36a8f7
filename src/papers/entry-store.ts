import type { PoolClient } from 'pg';
import type { Region } from '../core/syllabus.js';
import type { Db } from '../platform/db.js';

/** Queries for entering results of papers that were sat on paper. */

export interface MemberRow {
  memberId: number;
  /** Per cent, in this class. */
  extraTime: number;
  timeZone: string;
  region: Region;
}

export async function classMembers(db: Db, classId: number): Promise<MemberRow[]> {
  const { rows } = await db.pool.query<MemberRow>(
    `SELECT cm.person_id AS "memberId", cm.extra_time AS "extraTime", p.time_zone AS "timeZone", p.region
     FROM class_member cm JOIN person p ON p.id = cm.person_id WHERE cm.class_id = $1`,
    [classId],
  );
  return rows;
}

/** A member taken for a paper, or a name without an account. */
export interface Whose {
  paperId: string;
  memberId: number | null;
  guestName: string | null;
}

export interface NewSheet extends Whose {
  sittingId: string;
  version: number;
  extraTime: number;
  chance: { low: number; high: number } | null;
  choices: readonly (string | null)[];
  savedAt: Date;
}

/**
 * A sheet as it was handed in on paper, not yet marked. A paper that was only taken up on the screen, and not begun, gives way to it.
 * @returns false when this candidate has a sitting of this paper, which stays as it is
 */
export async function addSheet(sql: PoolClient, sheet: NewSheet): Promise<boolean> {
  const { sittingId, paperId, version, memberId, guestName, extraTime, chance, choices, savedAt } = sheet;
  await sql.query(
    `DELETE FROM sitting WHERE paper_id = $1 AND person_id = $2 AND way = 'screen' AND started_at IS NULL AND handed_in_at IS NULL`,
    [paperId, memberId],
  );
  const { rowCount } = await sql.query(
    `INSERT INTO sitting (id, paper_id, version, person_id, guest_name, way, extra_time, chance_low, chance_high)
     VALUES ($1, $2, $3, $4, $5, 'sheet', $6, $7, $8) ON CONFLICT DO NOTHING`,
    [sittingId, paperId, version, memberId, guestName, extraTime, chance?.low ?? null, chance?.high ?? null],
  );
  if (rowCount !== 1) return false;
  await putAnswers(
    sql,
    sittingId,
    choices.map((choice, index) => ({ position: index + 1, choice, right: null, token: null })),
    savedAt,
  );
  return true;
}

export interface KeptAnswer {
  position: number;
  choice: string | null;
  right: boolean | null;
  token: string | null;
}

/** A blank has no row, unless it was an answer before and stands in the record of answers. */
async function putAnswers(sql: PoolClient, sittingId: string, answers: readonly KeptAnswer[], savedAt: Date): Promise<void> {
  const kept = answers.filter(({ choice, token }) => choice !== null || token !== null);
  await sql.query(
    `INSERT INTO sitting_answer (sitting_id, position, choice, saved_at, "right", token)
     SELECT $1, a.position, a.choice, $3, a."right", a.token
     FROM jsonb_to_recordset($2) AS a(position int, choice text, "right" boolean, token uuid)`,
    [sittingId, JSON.stringify(kept), savedAt],
  );
}

/** The sitting that stands in the way of a sheet. */
export async function findSheet(
  sql: Pick<PoolClient, 'query'>,
  { paperId, memberId, guestName }: Whose,
): Promise<{ sittingId: string; version: number; right: number | null } | null> {
  const { rows } = await sql.query<{ sittingId: string; version: number; right: number | null }>(
    'SELECT id AS "sittingId", version, "right" FROM sitting WHERE paper_id = $1 AND (person_id = $2 OR guest_name = $3)',
    [paperId, memberId, guestName],
  );
  return rows[0] ?? null;
}

/** Holds a sheet that was entered until the transaction ends. @returns false for any other sitting */
export async function lockSheet(sql: PoolClient, paperId: string, sittingId: string): Promise<boolean> {
  const { rowCount } = await sql.query(
    `SELECT FROM sitting WHERE id = $2 AND paper_id = $1 AND way = 'sheet' AND handed_in_at IS NOT NULL FOR UPDATE`,
    [paperId, sittingId],
  );
  return rowCount === 1;
}

/** By question, since another version has it in another place: its line in the record of answers. */
export async function tokensOf(sql: PoolClient, sittingId: string): Promise<Map<number, string>> {
  const { rows } = await sql.query<{ questionId: number; token: string }>(
    `SELECT i.question_id AS "questionId", a.token FROM sitting s JOIN sitting_answer a ON a.sitting_id = s.id
       JOIN paper_item i ON i.paper_id = s.paper_id AND i.version = s.version AND i.position = a.position
     WHERE s.id = $1 AND a.token IS NOT NULL`,
    [sittingId],
  );
  return new Map(rows.map(({ questionId, token }) => [questionId, token]));
}

export interface CorrectedSheet {
  version: number;
  right: number;
  passed: boolean;
  answers: readonly KeptAnswer[];
  savedAt: Date;
}

/** Other letters in place of those that were mistyped. Earlier marks were of letters that nobody gave, so they go as well. */
export async function replaceSheet(sql: PoolClient, sittingId: string, { version, right, passed, answers, savedAt }: CorrectedSheet) {
  // Taken away first: a token may move to another place, and no two rows may hold it even for a moment.
  await sql.query('DELETE FROM sitting_answer WHERE sitting_id = $1', [sittingId]);
  await putAnswers(sql, sittingId, answers, savedAt);
  await sql.query('UPDATE sitting SET version = $2, "right" = $3, passed = $4, first_right = NULL, remarked_at = NULL WHERE id = $1', [
    sittingId,
    version,
    right,
    passed,
  ]);
}

export interface ResultRow {
  name: string;
  version: number;
  right: number;
  passed: boolean;
  /** Letters by question. */
  choices: Readonly<Record<string, string | null>>;
}

/** Whatever was handed in, on paper or on a screen. */
export async function resultsOf(db: Db, paperId: string): Promise<ResultRow[]> {
  const { rows } = await db.pool.query<ResultRow>(
    `SELECT coalesce(p.display_name, s.guest_name) AS name, s.version, s."right", s.passed,
       (SELECT coalesce(jsonb_object_agg(a.position, a.choice), '{}') FROM sitting_answer a WHERE a.sitting_id = s.id) AS choices
     FROM sitting s LEFT JOIN person p ON p.id = s.person_id
     WHERE s.paper_id = $1 AND s.handed_in_at IS NOT NULL ORDER BY lower(coalesce(p.display_name, s.guest_name)), s.id`,
    [paperId],
  );
  return rows;
}
