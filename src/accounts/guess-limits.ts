import { createHash } from 'node:crypto';
import { RungwiseError } from '../core/errors.js';
import type { Db } from '../platform/db.js';
import { giveBackGuess, takeGuess } from './guess-store.js';

/**
 * Slows guessing down, for all servers on one database alike. A try is counted before it is checked, so that many at
 * once cannot slip through, and given back when it was right: thirty people behind one address can all come in.
 *
 * An account is never locked as such: the limit on one name counts per address too, so a stranger elsewhere cannot
 * keep somebody out.
 */
export interface Limit {
  /** What is counted, such as `phrase` or `password`. */
  kind: string;
  /** Whose tries: an address, or a name at an address. */
  who: string;
  most: number;
  windowSeconds: number;
}

export const limits = {
  start: (address: string): Limit => ({ kind: 'start', who: address, most: 90, windowSeconds: 600 }),
  phrase: (address: string): Limit => ({ kind: 'phrase', who: address, most: 30, windowSeconds: 600 }),
  password: (address: string): Limit => ({ kind: 'password', who: address, most: 40, windowSeconds: 600 }),
  passwordOf: (name: string, address: string): Limit => ({ kind: 'password-of', who: `${name}\n${address}`, most: 8, windowSeconds: 600 }),
  /** The password again, by somebody who is signed in. */
  confirm: (personId: number): Limit => ({ kind: 'confirm', who: String(personId), most: 10, windowSeconds: 600 }),
  /** Wherever from: whoever gets this far has the password. Ten in a quarter of an hour hit one of three codes in a million with 0.3 % a day. */
  codeOf: (personId: number): Limit => ({ kind: 'code-of', who: String(personId), most: 10, windowSeconds: 900 }),
  link: (address: string): Limit => ({ kind: 'link', who: address, most: 30, windowSeconds: 600 }),
  /** Two slips of the pen for each of thirty people in one room. */
  join: (address: string): Limit => ({ kind: 'join', who: address, most: 60, windowSeconds: 600 }),
  /** All addresses together: with 100 codes open, so many guesses hit one in 54 years. */
  joinOfAll: (): Limit => ({ kind: 'join-of-all', who: '', most: 3000, windowSeconds: 600 }),
} as const;

/**
 * Counts one try against each limit, then works; a result for which `right` says yes gives the tries back.
 *
 * @throws RungwiseError too-many-tries with the seconds to wait
 */
export async function limited<T>(db: Db, now: Date, which: Limit[], right: (result: T) => boolean, work: () => Promise<T>): Promise<T> {
  for (const limit of which) {
    const { count, windowStart } = await takeGuess(db, keyOf(limit), now, limit.windowSeconds);
    if (count > limit.most) {
      const wait = Math.max(1, Math.ceil(limit.windowSeconds - (now.getTime() - windowStart.getTime()) / 1000));
      throw new RungwiseError('too-many-tries', `limit ${limit.kind}`, { retryAfterSeconds: wait });
    }
  }
  const result = await work();
  if (right(result)) for (const limit of which) await giveBackGuess(db, keyOf(limit));
  return result;
}

const keyOf = (limit: Limit): Buffer => createHash('sha256').update(`${limit.kind}\n${limit.who}`).digest();
