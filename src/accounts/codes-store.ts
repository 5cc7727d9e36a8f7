import type { PoolClient } from 'pg';
import type { Db } from '../platform/db.js';

/** Queries about one-time codes and recovery codes. */

type Sql = Pick<PoolClient, 'query'>;

export interface Proofs {
  id: number;
  displayName: string;
  signInName: string;
  role: 'tutor' | 'administrator';
  passwordHash: string | null;
  totpSecret: Buffer | null;
  totpStep: number | null;
}

/** What an open account of staff proves itself by; null for anybody else. */
export async function findProofs(sql: Sql, personId: number): Promise<Proofs | null> {
  const { rows } = await sql.query<Proofs>(
    `SELECT id, display_name AS "displayName", sign_in_name AS "signInName", role, password_hash AS "passwordHash", totp_secret AS "totpSecret",
       totp_step AS "totpStep"
     FROM person WHERE id = $1 AND role <> 'candidate' AND closed_at IS NULL`,
    [personId],
  );
  return rows[0] ?? null;
}

/** Uses a code up. @returns false when it, or a later one, was used before */
export async function useStep(sql: Sql, personId: number, secret: Buffer, step: number): Promise<boolean> {
  const { rowCount } = await sql.query(
    'UPDATE person SET totp_step = $3 WHERE id = $1 AND totp_secret = $2 AND (totp_step IS NULL OR totp_step < $3)',
    [personId, secret, step],
  );
  return rowCount === 1;
}

/** @returns false when it is none of theirs, or was used before */
export async function useRecoveryCode(sql: Sql, personId: number, hash: Buffer, now: Date): Promise<boolean> {
  const { rowCount } = await sql.query(
    'UPDATE recovery_code SET used_at = $3 WHERE person_id = $1 AND code_hash = $2 AND used_at IS NULL',
    [personId, hash, now],
  );
  return rowCount === 1;
}

/** Sets codes up. @returns false when they were set up before, as by the same form sent twice */
export async function setSecret(sql: Sql, personId: number, secret: Buffer, step: number): Promise<boolean> {
  const { rowCount } = await sql.query('UPDATE person SET totp_secret = $2, totp_step = $3 WHERE id = $1 AND totp_secret IS NULL', [
    personId,
    secret,
    step,
  ]);
  return rowCount === 1;
}

/** Takes codes off, and the recovery codes with them. */
export async function dropSecret(sql: Sql, personId: number): Promise<void> {
  await sql.query('UPDATE person SET totp_secret = NULL, totp_step = NULL WHERE id = $1', [personId]);
  await sql.query('DELETE FROM recovery_code WHERE person_id = $1', [personId]);
}

/** New recovery codes in place of all older ones. */
export async function setRecoveryCodes(sql: Sql, personId: number, hashes: readonly Buffer[]): Promise<void> {
  await sql.query('DELETE FROM recovery_code WHERE person_id = $1', [personId]);
  await sql.query('INSERT INTO recovery_code (person_id, code_hash) SELECT $1, unnest($2::bytea[])', [personId, hashes]);
}

export async function recoveryCodesLeft(db: Db, personId: number): Promise<number> {
  return await db.prisma.recoveryCode.count({ where: { personId, usedAt: null } });
}

export async function codesForAll(db: Db): Promise<boolean> {
  return (await db.prisma.installation.findUniqueOrThrow({ where: { id: 1 }, select: { secondFactorForAll: true } })).secondFactorForAll;
}

export async function setCodesForAll(db: Db, forAll: boolean): Promise<void> {
  await db.prisma.installation.update({ where: { id: 1 }, data: { secondFactorForAll: forAll } });
}
