import type { PoolClient } from 'pg';
import type { Role } from '../core/permissions.js';
import type { Db } from '../platform/db.js';

/** Queries about staff, invitations, and what all servers on one database share. */

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
export async function addStaff(sql: Pick<PoolClient, 'query'>, row: NewStaff): Promise<number | null> {
  const { rows } = await sql.query<{ id: number }>(
    `INSERT INTO person (display_name, sign_in_name, role, password_hash, invitation_hash, invitation_expires_at, time_zone, region, created_at)
     VALUES ($1, $2, $3, $4, $5, $6, 'Europe/London', 'uk', $7) ON CONFLICT (sign_in_name) DO NOTHING RETURNING id`,
    [row.displayName, row.signInName, row.role, row.passwordHash, row.invitationHash, row.invitationExpiresAt, row.now],
  );
  return rows[0]?.id ?? null;
}

export async function personByInvitation(db: Db, hash: Uint8Array<ArrayBuffer>, now: Date) {
  return db.prisma.person.findFirst({
    where: { invitationHash: hash, invitationExpiresAt: { gt: now } },
    select: { id: true, displayName: true, signInName: true },
  });
}

/** Uses an invitation up and sets the password. @returns the person's id, or null when it was used or ran out meanwhile. */
export async function useInvitation(sql: PoolClient, hash: Buffer, passwordHash: string, now: Date): Promise<number | null> {
  const { rows } = await sql.query<{ id: number }>(
    `UPDATE person SET password_hash = $2, invitation_hash = NULL, invitation_expires_at = NULL
     WHERE invitation_hash = $1 AND invitation_expires_at > $3 RETURNING id`,
    [hash, passwordHash, now],
  );
  return rows[0]?.id ?? null;
}

/** A new invitation for somebody already listed: the old password and the old link stop working when it is used. */
export async function renewInvitation(sql: Pick<PoolClient, 'query'>, signInName: string, hash: Buffer, expiresAt: Date): Promise<boolean> {
  const { rowCount } = await sql.query(
    `UPDATE person SET invitation_hash = $2, invitation_expires_at = $3 WHERE sign_in_name = $1 AND role <> 'candidate' AND password_hash IS NULL`,
    [signInName, hash, expiresAt],
  );
  return rowCount === 1;
}

export async function listStaff(db: Db) {
  return db.prisma.person.findMany({
    where: { role: { not: 'candidate' } },
    select: { displayName: true, signInName: true, role: true, passwordHash: true, invitationExpiresAt: true, lastSeenAt: true },
    orderBy: [{ role: 'asc' }, { displayName: 'asc' }],
    take: 200,
  });
}
