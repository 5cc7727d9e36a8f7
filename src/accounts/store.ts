import type { PoolClient } from 'pg';
import type { Db } from '../platform/db.js';
import type { Region } from '../core/syllabus.js';
import type { Role } from '../core/permissions.js';

/** Queries about people, sessions and guesses. Sessions are read on every request, so those go by plain prepared statements. */

export interface PersonRow {
  id: number;
  displayName: string;
  role: Role;
  timeZone: string;
  region: Region;
}

export interface SessionRow extends PersonRow {
  createdAt: Date;
  lastSeenAt: Date;
  expiresAt: Date;
  confirmedAt: Date | null;
  shared: boolean;
  needsCodes: boolean;
}

type Sql = Pick<PoolClient, 'query'>;

const personColumns = 'p.id, p.display_name AS "displayName", p.role, p.time_zone AS "timeZone", p.region';

export async function readSession(db: Db, idHash: Buffer): Promise<SessionRow | null> {
  const { rows } = await db.pool.query<SessionRow>({
    name: 'session-read',
    text: `SELECT ${personColumns}, s.created_at AS "createdAt", s.last_seen_at AS "lastSeenAt", s.expires_at AS "expiresAt",
             s.confirmed_at AS "confirmedAt", s.shared,
             p.role <> 'candidate' AND p.totp_secret IS NULL AND (SELECT second_factor_for_all FROM installation WHERE id = 1) AS "needsCodes"
           FROM session s JOIN person p ON p.id = s.person_id WHERE s.id_hash = $1 AND p.closed_at IS NULL`,
    values: [idHash],
  });
  return rows[0] ?? null;
}

export async function touchSession(db: Db, idHash: Buffer, now: Date): Promise<void> {
  await db.pool.query(
    `WITH seen AS (UPDATE session SET last_seen_at = $2 WHERE id_hash = $1 RETURNING person_id)
     UPDATE person SET last_seen_at = $2 FROM seen WHERE person.id = seen.person_id`,
    [idHash, now],
  );
}

/** Whether a paper of theirs runs. A look into what papers keep, and only when a session would end otherwise. */
export async function isSittingPaper(db: Db, personId: number, now: Date): Promise<boolean> {
  const { rowCount } = await db.pool.query(
    'SELECT 1 FROM sitting WHERE person_id = $1 AND started_at IS NOT NULL AND handed_in_at IS NULL AND deadline_at > $2 LIMIT 1',
    [personId, now],
  );
  return rowCount === 1;
}

export interface NewSession {
  idHash: Buffer;
  personId: number;
  now: Date;
  expiresAt: Date;
  confirmedAt: Date | null;
  shared: boolean;
}

export async function addSession(sql: Sql, row: NewSession): Promise<void> {
  await sql.query(
    'INSERT INTO session (id_hash, person_id, created_at, last_seen_at, expires_at, confirmed_at, shared) VALUES ($1, $2, $3, $3, $4, $5, $6)',
    [row.idHash, row.personId, row.now, row.expiresAt, row.confirmedAt, row.shared],
  );
  await sql.query('UPDATE person SET last_seen_at = $2 WHERE id = $1', [row.personId, row.now]);
}

export async function endSession(db: Db, idHash: Buffer): Promise<void> {
  await db.pool.query('DELETE FROM session WHERE id_hash = $1', [idHash]);
}

/** Ends all sessions of a person but, when given, the one in use. */
export async function endSessions(sql: Sql, personId: number, but: Buffer | null): Promise<void> {
  await sql.query('DELETE FROM session WHERE person_id = $1 AND ($2::bytea IS NULL OR id_hash <> $2)', [personId, but]);
}

export interface NewCandidate {
  displayName: string;
  timeZone: string;
  region: Region;
  phraseHash: Buffer;
  startToken: string;
  now: Date;
}

/** @returns the new person's id, or null when this form made a person before. */
export async function addCandidate(sql: Sql, row: NewCandidate): Promise<number | null> {
  const { rows } = await sql.query<{ id: number }>(
    `INSERT INTO person (display_name, role, time_zone, region, phrase_hash, start_token, created_at)
     VALUES ($1, 'candidate', $2, $3, $4, $5, $6) ON CONFLICT (start_token) DO NOTHING RETURNING id`,
    [row.displayName, row.timeZone, row.region, row.phraseHash, row.startToken, row.now],
  );
  return rows[0]?.id ?? null;
}

export async function personByPhrase(db: Db, phraseHash: Uint8Array<ArrayBuffer>) {
  return db.prisma.person.findUnique({ where: { phraseHash }, select: { id: true } });
}

export async function setPhrase(sql: Sql, personId: number, phraseHash: Buffer): Promise<void> {
  await sql.query('UPDATE person SET phrase_hash = $2 WHERE id = $1', [personId, phraseHash]);
}

/**
 * A phrase that a tutor had made, which is noted down with it.
 * @param before when the last such slip was made, as the tutor's page had it
 * @returns false for nobody's candidate, and when another slip was made meanwhile
 */
export async function setSlip(
  sql: Sql,
  personId: number,
  before: Date | null,
  slip: { phraseHash: Buffer; by: number; at: Date },
): Promise<boolean> {
  const { rowCount } = await sql.query(
    `UPDATE person SET phrase_hash = $3, slip_by = $4, slip_at = $5 WHERE id = $1 AND role = 'candidate' AND slip_at IS NOT DISTINCT FROM $2`,
    [personId, before, slip.phraseHash, slip.by, slip.at],
  );
  return rowCount === 1;
}

/** When a tutor last made a new slip for somebody, and who it was; null for never. Without a name that tutor is no longer here. */
export async function findSlip(db: Db, personId: number): Promise<{ at: Date; by: string | null } | null> {
  const { rows } = await db.pool.query<{ at: Date; by: string | null }>(
    `SELECT p.slip_at AS at, t.display_name AS by FROM person p LEFT JOIN person t ON t.id = p.slip_by WHERE p.id = $1 AND p.slip_at IS NOT NULL`,
    [personId],
  );
  return rows[0] ?? null;
}

export async function personBySignInName(db: Db, signInName: string) {
  return db.prisma.person.findUnique({ where: { signInName }, select: { id: true, passwordHash: true, role: true } });
}

export async function setPasswordHash(sql: Sql, personId: number, passwordHash: string): Promise<void> {
  await sql.query('UPDATE person SET password_hash = $2 WHERE id = $1', [personId, passwordHash]);
}

/** The password was typed in this browser just now. */
export async function confirmSession(db: Db, idHash: Buffer, now: Date): Promise<void> {
  await db.pool.query('UPDATE session SET confirmed_at = $2 WHERE id_hash = $1', [idHash, now]);
}

/** Makes a session a shared computer's: it ends at `expiresAt` at the latest. */
export async function shareSession(db: Db, idHash: Buffer, expiresAt: Date): Promise<void> {
  await db.pool.query('UPDATE session SET shared = true, expires_at = least(expires_at, $2) WHERE id_hash = $1', [idHash, expiresAt]);
}

// The database makes the word, so that no hash of a session is read for a page.
const sessionWord = "left(encode(sha256(id_hash), 'hex'), 24)";

export interface ListedSession {
  /** Names it in a form. */
  word: string;
  here: boolean;
  createdAt: Date;
  lastSeenAt: Date;
  shared: boolean;
}

/** @param here the session that asks */
export async function listSessions(db: Db, personId: number, here: Buffer): Promise<ListedSession[]> {
  const { rows } = await db.pool.query<ListedSession>(
    `SELECT ${sessionWord} AS word, id_hash = $2 AS here, created_at AS "createdAt", last_seen_at AS "lastSeenAt", shared
     FROM session WHERE person_id = $1 ORDER BY last_seen_at DESC LIMIT 50`,
    [personId, here],
  );
  return rows;
}

export async function endSessionNamed(db: Db, personId: number, word: string): Promise<void> {
  await db.pool.query(`DELETE FROM session WHERE person_id = $1 AND ${sessionWord} = $2`, [personId, word]);
}

export async function updateAccount(
  db: Db,
  personId: number,
  data: { displayName: string; timeZone: string; region: Region },
): Promise<void> {
  await db.prisma.person.update({ where: { id: personId }, data });
}
