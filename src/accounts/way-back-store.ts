import type { Db } from '../platform/db.js';

/** The way back for whoever runs the server and has lost password or codes: from the computer it runs on, by nobody's permission but the shell's. */

/** @returns the number of the open account of staff with this sign-in name, whose codes are taken off and whose sessions end; null for nobody */
export async function openWayBack(db: Db, signInName: string, hash: Buffer, expiresAt: Date): Promise<number | null> {
  const { rows } = await db.pool.query<{ id: number }>(
    `WITH found AS (
       UPDATE person SET invitation_hash = $2, invitation_expires_at = $3, totp_secret = NULL, totp_step = NULL
       WHERE sign_in_name = $1 AND role <> 'candidate' AND closed_at IS NULL RETURNING id
     ), codes AS (DELETE FROM recovery_code c USING found f WHERE c.person_id = f.id),
       sessions AS (DELETE FROM session s USING found f WHERE s.person_id = f.id)
     SELECT id FROM found`,
    [signInName, hash, expiresAt],
  );
  return rows[0]?.id ?? null;
}
