import type { PoolClient } from 'pg';
import type { Db } from '../platform/db.js';

/** Queries about practical skills that were seen and signed. A signature is never changed but for its withdrawal. */

type Sql = Pick<PoolClient, 'query'>;

export interface StandingRow {
  personId: number;
  skill: string;
  /** 2026-11-26 */
  seenOn: string;
}

/** What stands signed, of all who are in the class. */
export async function standingOf(db: Db, classId: number): Promise<StandingRow[]> {
  const { rows } = await db.pool.query<StandingRow>(
    `SELECT s.person_id AS "personId", s.skill, max(s.seen_on) AS "seenOn"
     FROM sign_off s JOIN class_member m ON m.person_id = s.person_id AND m.class_id = $1
     WHERE s.withdrawn_at IS NULL GROUP BY s.person_id, s.skill`,
    [classId],
  );
  return rows;
}

/** The skill as it was when it was signed. */
export interface SignedBody {
  packTitle: string;
  title: string;
  /** All of them were seen. */
  criteria: string[];
}

export interface SignOffRow {
  id: string;
  personId: number;
  /** Slug of the pack and id of the skill, parted by a stroke. */
  skill: string;
  body: SignedBody;
  remarks: string;
  /** 2026-11-26 */
  seenOn: string;
  signerName: string;
  signedAt: Date;
  withdrawnAt: Date | null;
  withdrawnBy: string | null;
  reason: string | null;
}

const signOffColumns = `id, person_id AS "personId", skill, body, remarks, seen_on AS "seenOn", signer_name AS "signerName", signed_at AS "signedAt",
  withdrawn_at AS "withdrawnAt", withdrawn_by AS "withdrawnBy", reason`;

/** All of one person, the withdrawn ones too, the first signed first. */
export async function signOffsOf(db: Db, personId: number): Promise<SignOffRow[]> {
  const { rows } = await db.pool.query<SignOffRow>(`SELECT ${signOffColumns} FROM sign_off WHERE person_id = $1 ORDER BY signed_at, id`, [
    personId,
  ]);
  return rows;
}

/**
 * Whether somebody is in the class, and stays so until the transaction ends. Others who sign for the same person wait meanwhile, in
 * whatever class they do it.
 */
export async function holdMember(sql: Sql, classId: number, personId: number): Promise<boolean> {
  const { rowCount } = await sql.query(
    `SELECT FROM class_member m JOIN person p ON p.id = m.person_id WHERE m.class_id = $1 AND m.person_id = $2
     FOR SHARE OF m FOR NO KEY UPDATE OF p`,
    [classId, personId],
  );
  return rowCount === 1;
}

/** The signature of this id, or else what stands signed of this skill. */
export async function findSigned(sql: Sql, id: string, personId: number, skill: string): Promise<SignOffRow | null> {
  const { rows } = await sql.query<SignOffRow>(
    `SELECT ${signOffColumns} FROM sign_off WHERE id = $1 OR (person_id = $2 AND skill = $3 AND withdrawn_at IS NULL)
     ORDER BY id = $1 DESC LIMIT 1`,
    [id, personId, skill],
  );
  return rows[0] ?? null;
}

export interface NewSignOff {
  id: string;
  personId: number;
  skill: string;
  body: SignedBody;
  remarks: string;
  seenOn: string;
  signedBy: number;
  signerName: string;
  signedAt: Date;
}

export async function addSignOff(sql: Sql, signOff: NewSignOff): Promise<void> {
  const { id, personId, skill, body, remarks, seenOn, signedBy, signerName, signedAt } = signOff;
  await sql.query(
    `INSERT INTO sign_off (id, person_id, skill, body, remarks, seen_on, signed_by, signer_name, signed_at)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)`,
    [id, personId, skill, JSON.stringify(body), remarks, seenOn, signedBy, signerName, signedAt],
  );
}

/** Once: sent again, the first withdrawal stands. */
export async function withdrawSignOff(db: Db, id: string, by: string, reason: string, now: Date): Promise<void> {
  await db.pool.query('UPDATE sign_off SET withdrawn_at = $2, withdrawn_by = $3, reason = $4 WHERE id = $1 AND withdrawn_at IS NULL', [
    id,
    now,
    by,
    reason,
  ]);
}
