import { recordChange } from '../audit/index.js';
import { inTransaction, type Db } from '../platform/db.js';
import { dropSecret, findProofs } from './codes-store.js';
import { hoursFrom, newPasswordHours, newToken, tokenHash } from './one-time-link.js';
import { signInNameOf } from './sign-in-name.js';
import { setLink } from './staff-store.js';
import { endSessions, personBySignInName } from './store.js';

/**
 * A one-time link to a new password for a member of staff, made on the server itself: the way back of an only administrator.
 * Their one-time codes are taken off, and all their browsers signed out. It stands in the list of what staff changed.
 * @returns the token of the link; null when no open account of staff has this name
 */
export async function wayBack(db: Db, now: Date, name: string): Promise<{ token: string } | null> {
  const token = newToken();
  const named = await personBySignInName(db, signInNameOf(name));
  if (named === null) return null;
  return await inTransaction(db, async (sql) => {
    const found = await findProofs(sql, named.id);
    if (found === null) return null;
    await setLink(sql, named.id, tokenHash(token), hoursFrom(now, newPasswordHours));
    await dropSecret(sql, named.id);
    await endSessions(sql, named.id, null);
    const what = 'makes a link for a new password, and takes one-time codes off';
    await recordChange(sql, now, { personId: null, role: 'command', what, about: { person: named.id } });
    return { token };
  });
}
