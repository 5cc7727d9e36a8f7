import { randomInt } from 'node:crypto';
import type { PoolClient } from 'pg';
import { makePhrase } from '../core/return-phrase.js';
import type { Region } from '../core/syllabus.js';
import { inTransaction } from '../platform/db.js';
import { hashPhrase } from '../platform/password.js';
import type { AccountsNeeds } from './needs.js';
import { requirePermission } from './require-permission.js';
import type { Person } from './sessions.js';
import { addCandidate, endSessions, findSlip, setSlip } from './store.js';

/**
 * Accounts that a tutor makes for candidates without a device, and phrases in place of lost ones. Accounts knows no classes: whoever
 * calls decides, in the same transaction, whether it may be.
 */

export interface NewAccount {
  name: string;
  region: Region;
  timeZone: string;
  /** Of the form and the line of it, so that sending it twice makes nobody twice. */
  startToken: string;
}

export function slipsService({ db, clock, installation, enrol }: AccountsNeeds) {
  async function freshPhrase(): Promise<{ words: string[]; phraseHash: Buffer }> {
    const words = makePhrase((below) => randomInt(below));
    return { words, phraseHash: await hashPhrase(words.join(' '), installation.phraseSalt) };
  }

  /**
   * Makes all of these candidates, or none. Their phrases are told this once.
   * @param also what else is done with them in the same transaction
   * @returns null when this very form was sent before
   */
  async function addFor(
    person: Person,
    accounts: readonly NewAccount[],
    also: (sql: PoolClient, ids: number[]) => Promise<void>,
  ): Promise<{ personId: number; words: string[] }[] | null> {
    requirePermission(person, 'keep-classes');
    const phrases = await Promise.all(accounts.map(freshPhrase));
    return await inTransaction(db, async (sql) => {
      const made: { personId: number; words: string[] }[] = [];
      for (const [index, { name, region, timeZone, startToken }] of accounts.entries()) {
        const { words, phraseHash } = phrases[index] as (typeof phrases)[number];
        const row = { displayName: name, region, timeZone, phraseHash, startToken, now: clock.now() };
        const personId = await addCandidate(sql, row);
        if (personId === null) throw new SentBefore();
        await enrol(sql, personId, region);
        made.push({ personId, words });
      }
      await also(
        sql,
        made.map(({ personId }) => personId),
      );
      return made;
    }).catch((error: unknown) => {
      if (error instanceof SentBefore) return null;
      throw error;
    });
  }

  /**
   * A new phrase for a candidate who has lost the old one, which stops working; all of the candidate's browsers are signed out. Who made it
   * and when is noted, and shown to the candidate.
   * @param before when the last one was made, as the tutor's page had it: sending a form twice makes one
   * @param allowed whether this tutor may, asked in the same transaction
   * @returns null when it was not allowed, or another one was made meanwhile
   */
  async function slipFor(
    person: Person,
    candidateId: number,
    before: Date | null,
    allowed: (sql: PoolClient) => Promise<boolean>,
  ): Promise<string[] | null> {
    requirePermission(person, 'keep-classes');
    const { words, phraseHash } = await freshPhrase();
    return await inTransaction(db, async (sql) => {
      const slip = { phraseHash, by: person.id, at: clock.now() };
      if (!(await allowed(sql)) || !(await setSlip(sql, candidateId, before, slip))) return null;
      await endSessions(sql, candidateId, null);
      return words;
    });
  }

  async function slipOf(person: Person): Promise<{ at: Date; by: string | null } | null> {
    requirePermission(person, 'keep-own-account');
    return await findSlip(db, person.id);
  }

  return { addFor, slipFor, slipOf };
}

class SentBefore extends Error {}
