import { createHash, randomBytes } from 'node:crypto';
import type { PoolClient } from 'pg';
import type { Role } from '../core/permissions.js';
import type { Clock } from '../platform/clock.js';
import type { Db } from '../platform/db.js';
import { addSession, endSession, isSittingPaper, readSession, touchSession, type PersonRow, type SessionRow } from './store.js';

/**
 * Sessions in the database, so that any server can answer and any session can be ended at once.
 * The cookie holds 192 random bits; the database holds only their SHA-256.
 *
 * Lifetimes: a candidate 120 days without a visit and 400 days in all (a year of study on one's own phone);
 * staff 12 hours without a visit and 7 days in all; anybody on a shared computer an hour without a visit and 12 hours in all.
 * While a paper of a candidate's runs, none of them ends the session.
 */
export interface Person extends PersonRow {
  sessionHash: Buffer;
}

/** Who asks, and how they came in. */
export interface Visit extends Person {
  /** When the password was last typed in this browser; null for candidates. */
  confirmedAt: Date | null;
  /** On a computer that others use. */
  shared: boolean;
  /** Staff who have to set up their one-time codes before anything else. */
  needsCodes: boolean;
}

const minute = 60_000;
const hour = 60 * minute;
const day = 24 * hour;

interface Lifetime {
  idle: number;
  whole: number;
  /** How long a visit may go unrecorded; keeps reading a page from writing to the database each time. */
  touchAfter: number;
}

const staff: Lifetime = { idle: 12 * hour, whole: 7 * day, touchAfter: 30 * minute };
const own: Record<Role, Lifetime> = {
  candidate: { idle: 120 * day, whole: 400 * day, touchAfter: 30 * minute },
  tutor: staff,
  administrator: staff,
};
const onShared: Lifetime = { idle: hour, whole: 12 * hour, touchAfter: 5 * minute };

const lifetimeOf = (role: Role, shared: boolean): Lifetime => (shared ? onShared : own[role]);

/** When a session that begins now is over at the latest. */
export const endOf = (role: Role, shared: boolean, now: Date): Date => new Date(now.getTime() + lifetimeOf(role, shared).whole);

export const newCookie = (): string => randomBytes(24).toString('base64url');
export const cookieHash = (cookie: string): Buffer => createHash('sha256').update(cookie).digest();

/** How a session begins: on a shared computer or one's own, with a password typed or without. */
export interface Beginning {
  shared?: boolean;
  confirmed?: boolean;
}

/** Makes a session and returns the value for the cookie. A value brought by the browser is never taken on. */
export async function openSession(
  sql: Pick<PoolClient, 'query'>,
  personId: number,
  role: Role,
  now: Date,
  { shared = false, confirmed = false }: Beginning = {},
): Promise<string> {
  const cookie = newCookie();
  const idHash = cookieHash(cookie);
  await addSession(sql, { idHash, personId, now, expiresAt: endOf(role, shared, now), confirmedAt: confirmed ? now : null, shared });
  return cookie;
}

/** Who holds this cookie, or null. */
export async function findSession(db: Db, clock: Clock, cookie: string): Promise<Visit | null> {
  if (!/^[A-Za-z0-9_-]{32}$/.test(cookie)) return null;
  const idHash = cookieHash(cookie);
  const row = await readSession(db, idHash);
  if (row === null) return null;
  const now = clock.now();
  if (isOver(row, now) && !(await isSittingPaper(db, row.id, now))) {
    await endSession(db, idHash);
    return null;
  }
  if (now.getTime() - row.lastSeenAt.getTime() > lifetimeOf(row.role, row.shared).touchAfter) await touchSession(db, idHash, now);
  const { id, displayName, role, timeZone, region, confirmedAt, shared, needsCodes } = row;
  return { id, displayName, role, timeZone, region, sessionHash: idHash, confirmedAt, shared, needsCodes };
}

const isOver = ({ role, shared, lastSeenAt, expiresAt }: SessionRow, now: Date): boolean =>
  now > expiresAt || now.getTime() - lastSeenAt.getTime() > lifetimeOf(role, shared).idle;

/**
 * Whether the password was typed lately enough: five minutes for opening a page, and fifteen for sending its form, so that nothing is
 * lost that took a while to type. Candidates have no password, so nothing is asked of them.
 */
export function freshness({ role, confirmedAt }: Pick<Visit, 'role' | 'confirmedAt'>, now: Date, form: boolean): boolean {
  if (role === 'candidate') return true;
  return confirmedAt !== null && now.getTime() - confirmedAt.getTime() <= (form ? 15 : 5) * minute;
}
