import type { PoolClient } from 'pg';
import type { Role } from '../core/permissions.js';
import type { Db } from '../platform/db.js';

/** Queries about staff, invitations, and what all servers on one database share. */

type Sql = Pick<PoolClient, 'query'>;

export interface Installation {
  cookieSecret: Buffer;
  phraseSalt: Buffer;
}

/** Made once by whichever server comes first; everybody reads what stands there. */
export async function ensureInstallation(db: Db, fresh: Installation): Promise<Installation> {
  await db.pool.query('INSERT INTO installation (id, cookie_secret, phrase_salt) VALUES (1, $1, $2) ON CONFLICT (id) DO NOTHING', [
    fresh.cookieSecret,
    fresh.phraseSalt,
  ]);
  const { rows } = await db.pool.query<Installation>(
    'SELECT cookie_secret AS "cookieSecret", phrase_salt AS "phraseSalt" FROM installation WHERE id = 1',
  );
  return rows[0] as Installation;
}

export async function hasAdministrator(db: Db): Promise<boolean> {
  return (await db.prisma.person.count({ where: { role: 'administrator', passwordHash: { not: null } } })) > 0;
}

export async function setSetUpToken(db: Db, hash: Uint8Array<ArrayBuffer>, expiresAt: Date): Promise<void> {
  await db.prisma.installation.update({ where: { id: 1 }, data: { setUpTokenHash: hash, setUpTokenExpiresAt: expiresAt } });
}

export async function isSetUpToken(db: Db, hash: Uint8Array<ArrayBuffer>, now: Date): Promise<boolean> {
  return (await db.prisma.installation.count({ where: { id: 1, setUpTokenHash: hash, setUpTokenExpiresAt: { gt: now } } })) > 0;
}

/** Uses the set-up token up. @returns false when somebody else used it first. */
export async function useSetUpToken(sql: PoolClient, hash: Buffer, now: Date): Promise<boolean> {
  const { rowCount } = await sql.query(
    'UPDATE installation SET set_up_token_hash = NULL, set_up_token_expires_at = NULL WHERE id = 1 AND set_up_token_hash = $1 AND set_up_token_expires_at > $2',
    [hash, now],
  );
  return rowCount === 1;
}

export interface NewStaff {
  displayName: string;
  signInName: string;
  role: Role;
  passwordHash: string | null;
  invitationHash: Buffer | null;
  invitationExpiresAt: Date | null;
  now: Date;
}

/** @returns the new person's id, or null when the sign-in name is taken. */
export async function addStaff(sql: Sql, row: NewStaff): Promise<number | null> {
  const { rows } = await sql.query<{ id: number }>(
    `INSERT INTO person (display_name, sign_in_name, role, password_hash, invitation_hash, invitation_expires_at, time_zone, region, created_at)
     VALUES ($1, $2, $3, $4, $5, $6, 'Europe/London', 'uk', $7) ON CONFLICT (sign_in_name) DO NOTHING RETURNING id`,
    [row.displayName, row.signInName, row.role, row.passwordHash, row.invitationHash, row.invitationExpiresAt, row.now],
  );
  return rows[0]?.id ?? null;
}

export async function personByInvitation(db: Db, hash: Uint8Array<ArrayBuffer>, now: Date) {
  return db.prisma.person.findFirst({
    where: { invitationHash: hash, invitationExpiresAt: { gt: now }, closedAt: null },
    select: { id: true, displayName: true, signInName: true, passwordHash: true },
  });
}

/** Uses an invitation up and sets the password. @returns the person's id, or null when it was used or ran out meanwhile. */
export async function useInvitation(sql: PoolClient, hash: Buffer, passwordHash: string, now: Date): Promise<number | null> {
  const { rows } = await sql.query<{ id: number }>(
    `UPDATE person SET password_hash = $2, invitation_hash = NULL, invitation_expires_at = NULL
     WHERE invitation_hash = $1 AND invitation_expires_at > $3 AND closed_at IS NULL RETURNING id`,
    [hash, passwordHash, now],
  );
  return rows[0]?.id ?? null;
}

/** A new invitation for somebody already listed who never used theirs. @returns the person's id, or null when there is nobody like that */
export async function renewInvitation(sql: Sql, signInName: string, hash: Buffer, expiresAt: Date): Promise<number | null> {
  const { rows } = await sql.query<{ id: number }>(
    `UPDATE person SET invitation_hash = $2, invitation_expires_at = $3
     WHERE sign_in_name = $1 AND role <> 'candidate' AND password_hash IS NULL AND closed_at IS NULL RETURNING id`,
    [signInName, hash, expiresAt],
  );
  return rows[0]?.id ?? null;
}

/** A one-time link for somebody; an older one stops working. */
export async function setLink(sql: Sql, personId: number, hash: Buffer, expiresAt: Date): Promise<void> {
  await sql.query('UPDATE person SET invitation_hash = $2, invitation_expires_at = $3 WHERE id = $1', [personId, hash, expiresAt]);
}

/** A password changed by its owner; a link that lies about stops working. */
export async function setOwnPassword(sql: Sql, personId: number, passwordHash: string): Promise<void> {
  await sql.query('UPDATE person SET password_hash = $2, invitation_hash = NULL, invitation_expires_at = NULL WHERE id = $1', [
    personId,
    passwordHash,
  ]);
}

/** Everybody who can do what administrators do, locked until the transaction ends. */
export async function lockAdministrators(sql: Sql): Promise<number[]> {
  const { rows } = await sql.query<{ id: number }>(
    `SELECT id FROM person WHERE role = 'administrator' AND closed_at IS NULL AND password_hash IS NOT NULL ORDER BY id FOR UPDATE`,
  );
  return rows.map(({ id }) => id);
}

export async function lockStaff(sql: Sql, personId: number): Promise<boolean> {
  return (await sql.query(`SELECT 1 FROM person WHERE id = $1 AND role <> 'candidate' FOR UPDATE`, [personId])).rowCount === 1;
}

/** @returns false when that was the role already */
export async function setRole(sql: Sql, personId: number, role: Role): Promise<boolean> {
  return (await sql.query('UPDATE person SET role = $2 WHERE id = $1 AND role <> $2', [personId, role])).rowCount === 1;
}

/** Closes an account, or with null opens it again. */
export async function setClosed(sql: Sql, personId: number, closedAt: Date | null): Promise<void> {
  await sql.query(
    `UPDATE person SET closed_at = CASE WHEN $2::timestamptz IS NULL THEN NULL ELSE coalesce(closed_at, $2) END,
       invitation_hash = NULL, invitation_expires_at = NULL WHERE id = $1`,
    [personId, closedAt],
  );
}

export async function isStaff(db: Db, personId: number): Promise<boolean> {
  return (await db.prisma.person.count({ where: { id: personId, role: { not: 'candidate' } } })) > 0;
}

export interface ListedStaff {
  id: number;
  displayName: string;
  role: 'tutor' | 'administrator';
  hasPassword: boolean;
  hasCodes: boolean;
  invitationExpiresAt: Date | null;
  lastSeenAt: Date | null;
  closedAt: Date | null;
}

/** All of them, or the one of this number. */
export async function listStaff(db: Db, personId: number | null = null): Promise<ListedStaff[]> {
  const { rows } = await db.pool.query<ListedStaff>(
    `SELECT id, display_name AS "displayName", role, password_hash IS NOT NULL AS "hasPassword", totp_secret IS NOT NULL AS "hasCodes",
       invitation_expires_at AS "invitationExpiresAt", last_seen_at AS "lastSeenAt", closed_at AS "closedAt"
     FROM person WHERE role <> 'candidate' AND ($1::int IS NULL OR id = $1) ORDER BY closed_at IS NOT NULL, role, display_name LIMIT 200`,
    [personId],
  );
  return rows;
}
