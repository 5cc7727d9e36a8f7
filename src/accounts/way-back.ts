import { createHash, randomBytes } from 'node:crypto';
import { recordChange } from '../audit/index.js';
import type { Db } from '../platform/db.js';
import { signInNameOf } from './sign-in-name.js';
import { openWayBack } from './way-back-store.js';

const hours = 1;

/**
 * A one-time link to a new password for a member of staff, made on the server itself: the way back of an only administrator.
 * Their one-time codes are taken off, and all their browsers signed out. It stands in the list of what staff changed.
 * @returns the token of the link; null when no open account of staff has this name
 */
export async function wayBack(db: Db, now: Date, name: string): Promise<{ token: string; until: Date } | null> {
  const token = randomBytes(24).toString('base64url');
  const until = new Date(now.getTime() + hours * 3_600_000);
  const id = await openWayBack(db, signInNameOf(name), createHash('sha256').update(token).digest(), until);
  if (id === null) return null;
  const what = 'makes a link for a new password, and takes one-time codes off';
  await recordChange(db.pool, now, { personId: null, role: 'command', what, about: { person: id } });
  return { token, until };
}
