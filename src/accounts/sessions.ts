import { createHash, randomBytes } from 'node:crypto';
import type { PoolClient } from 'pg';
import type { Role } from '../core/permissions.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { addSession, endSession, readSession, touchSession, type PersonRow } from './store.js';

/**
 * Sessions in the database, so that any server can answer and any session can be ended at once.
 * The cookie holds 192 random bits; the database holds only their SHA-256.
 *
 * Lifetimes: a candidate 120 days without a visit and 400 days in all (a year of study on one's own phone);
 * staff 12 hours without a visit and 7 days in all.
 */
export interface Person extends PersonRow {
  sessionHash: Buffer;
}

const day = 86_400_000;
const lifetimes: Record<Role, { idle: number; whole: number }> = {
  candidate: { idle: 120 * day, whole: 400 * day },
  tutor: { idle: day / 2, whole: 7 * day },
  administrator: { idle: day / 2, whole: 7 * day },
};

/** How long a visit may go unrecorded; keeps reading a page from writing to the database each time. */
const touchAfter = 30 * 60_000;

export const newCookie = (): string => randomBytes(24).toString('base64url');
export const cookieHash = (cookie: string): Buffer => createHash('sha256').update(cookie).digest();

/** Makes a session and returns the value for the cookie. A value brought by the browser is never taken on. */
export async function openSession(sql: Pick<PoolClient, 'query'>, personId: number, role: Role, now: Date): Promise<string> {
  const cookie = newCookie();
  await addSession(sql, { idHash: cookieHash(cookie), personId, now, expiresAt: new Date(now.getTime() + lifetimes[role].whole) });
  return cookie;
}

/** Who holds this cookie, or null. */
export async function findSession(db: Db, clock: Clock, cookie: string): Promise<Person | null> {
  if (!/^[A-Za-z0-9_-]{32}$/.test(cookie)) return null;
  const idHash = cookieHash(cookie);
  const row = await readSession(db, idHash);
  if (row === null) return null;
  const now = clock.now();
  const idle = now.getTime() - row.lastSeenAt.getTime();
  if (now > row.expiresAt || idle > lifetimes[row.role].idle) {
    await endSession(db, idHash);
    return null;
  }
  if (idle > touchAfter) await touchSession(db, idHash, now);
  const { id, displayName, role, timeZone, region } = row;
  return { id, displayName, role, timeZone, region, sessionHash: idHash };
}
