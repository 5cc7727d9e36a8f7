import { randomInt } from 'node:crypto';
import type { PoolClient } from 'pg';
import { isTimeZone } from '../core/calendar.js';
import { makePhrase, readPhrase } from '../core/return-phrase.js';
import type { Region } from '../core/syllabus.js';
import { inTransaction } from '../platform/db.js';
import { hashPhrase } from '../platform/password.js';
import { limited, limits } from './guess-limits.js';
import type { AccountsNeeds } from './needs.js';
import { requirePermission } from './require-permission.js';
import { findSession, openSession, type Person } from './sessions.js';
import { staffService } from './sign-in.js';
import { slipsService } from './slips-service.js';
import { addCandidate, endSession, endSessions, listSessions, personByPhrase, setPhrase, updateAccount } from './store.js';

export interface StartForm {
  name: string;
  region: Region;
  timeZone: string;
  startToken: string;
}

export type Started = { cookie: string; phrase: string[] };

export type AccountsService = ReturnType<typeof accountsService>;

export function accountsService(needs: AccountsNeeds) {
  const { db, clock, installation } = needs;

  /**
   * Makes a candidate with a session and a return phrase. Null when this very form was sent before.
   * @param also what else is done in the same transaction; when it throws, nobody is made
   */
  async function start(
    form: StartForm,
    address: string,
    also?: (sql: PoolClient, personId: number) => Promise<void>,
  ): Promise<Started | null> {
    const now = clock.now();
    return await limited(
      db,
      now,
      [limits.start(address)],
      () => false,
      async () => {
        const phrase = makePhrase((below) => randomInt(below));
        const phraseHash = await hashPhrase(phrase.join(' '), installation.phraseSalt);
        const timeZone = isTimeZone(form.timeZone) ? form.timeZone : 'Europe/London';
        return await inTransaction(db, async (sql) => {
          const id = await addCandidate(sql, {
            displayName: form.name,
            timeZone,
            region: form.region,
            phraseHash,
            startToken: form.startToken,
            now,
          });
          if (id === null) return null;
          await needs.enrol(sql, id, form.region);
          await also?.(sql, id);
          return { cookie: await openSession(sql, id, 'candidate', now), phrase };
        });
      },
    );
  }

  /** @returns the cookie of a new session, or what is wrong with the phrase in words for the form. */
  async function comeBack(text: string, address: string): Promise<{ cookie: string } | { why: string }> {
    const phrase = readPhrase(text);
    if (!phrase.understood) return { why: phrase.message };
    const now = clock.now();
    return await limited(
      db,
      now,
      [limits.phrase(address)],
      (result) => 'cookie' in result,
      async () => {
        const person = await personByPhrase(db, new Uint8Array(await hashPhrase(phrase.canonical, installation.phraseSalt)));
        if (person === null)
          return { why: 'All seven words are from our list, but together they belong to nobody. Check each word and their order.' };
        return { cookie: await openSession(db.pool, person.id, 'candidate', now) };
      },
    );
  }

  /** A new phrase in place of the old one; other browsers are signed out, since the old phrase may be in other hands. */
  async function newPhrase(person: Person): Promise<string[]> {
    requirePermission(person, 'study');
    const phrase = makePhrase((below) => randomInt(below));
    const phraseHash = await hashPhrase(phrase.join(' '), installation.phraseSalt);
    await inTransaction(db, async (sql) => {
      await setPhrase(sql, person.id, phraseHash);
      await endSessions(sql, person.id, person.sessionHash);
    });
    return phrase;
  }

  async function update(person: Person, form: { name: string; timeZone: string; region: Region }): Promise<void> {
    requirePermission(person, 'keep-own-account');
    await updateAccount(db, person.id, { displayName: form.name, timeZone: form.timeZone, region: form.region });
    if (person.role === 'candidate' && form.region !== person.region)
      await inTransaction(db, (sql) => needs.enrol(sql, person.id, form.region));
  }

  return {
    start,
    comeBack,
    newPhrase,
    update,
    whoHolds: (cookie: string) => findSession(db, clock, cookie),
    sessionsOf: (person: Person) => listSessions(db, person.id),
    signOut: (person: Person) => endSession(db, person.sessionHash),
    signOutEverywhere: (person: Person) => endSessions(db.pool, person.id, null),
    ...staffService({ db, clock }),
    ...slipsService(needs),
  };
}
