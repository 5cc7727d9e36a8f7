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
import { linksService } from './links-service.js';
import { securityService } from './security-service.js';
import { endOf, findSession, openSession, type Person } from './sessions.js';
import { signInService } from './sign-in-service.js';
import { slipsService } from './slips-service.js';
import { staffService } from './staff-service.js';
import * as store from './store.js';

export interface StartForm {
  name: string;
  region: Region;
  timeZone: string;
  startToken: string;
}

export type Started = { cookie: string; phrase: string[]; personId: number };

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
          const id = await store.addCandidate(sql, {
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
          return { cookie: await openSession(sql, id, 'candidate', now), phrase, personId: id };
        });
      },
    );
  }

  /** @returns the cookie of a new session, or what is wrong with the phrase in words for the form. */
  async function comeBack(text: string, shared: boolean, address: string): Promise<{ cookie: string; personId: number } | { why: string }> {
    const phrase = readPhrase(text);
    if (!phrase.understood) return { why: phrase.message };
    const now = clock.now();
    return await limited(
      db,
      now,
      [limits.phrase(address)],
      (result) => 'cookie' in result,
      async () => {
        const person = await store.personByPhrase(db, new Uint8Array(await hashPhrase(phrase.canonical, installation.phraseSalt)));
        if (person === null)
          return {
            why: 'All seven words are from our list, but together they belong to nobody. Check each word and their order. An account that was removed cannot be come back to.',
          };
        return { cookie: await openSession(db.pool, person.id, 'candidate', now, { shared }), personId: person.id };
      },
    );
  }

  /** A new phrase in place of the old one; other browsers are signed out, since the old phrase may be in other hands. */
  async function newPhrase(person: Person): Promise<string[]> {
    requirePermission(person, 'study');
    const phrase = makePhrase((below) => randomInt(below));
    const phraseHash = await hashPhrase(phrase.join(' '), installation.phraseSalt);
    await inTransaction(db, async (sql) => {
      await store.setPhrase(sql, person.id, phraseHash);
      await store.endSessions(sql, person.id, person.sessionHash);
    });
    return phrase;
  }

  async function update(person: Person, form: { name: string; timeZone: string; region: Region }): Promise<void> {
    requirePermission(person, 'keep-own-account');
    await store.updateAccount(db, person.id, { displayName: form.name, timeZone: form.timeZone, region: form.region });
    if (person.role === 'candidate' && form.region !== person.region)
      await inTransaction(db, (sql) => needs.enrol(sql, person.id, form.region));
  }

  /** All browsers somebody is signed in with. */
  async function sessionsOf(person: Person) {
    requirePermission(person, 'keep-own-account');
    return await store.listSessions(db, person.id, person.sessionHash);
  }

  async function endOwnSession(person: Person, word: string): Promise<void> {
    requirePermission(person, 'keep-own-account');
    await store.endSessionNamed(db, person.id, word);
  }

  /** For whoever came in on a computer that others use and did not say so then. */
  async function share(person: Person): Promise<void> {
    requirePermission(person, 'keep-own-account');
    await store.shareSession(db, person.sessionHash, endOf(person.role, true, clock.now()));
  }

  const signIn = signInService(needs);

  return {
    start,
    comeBack,
    newPhrase,
    update,
    whoHolds: (cookie: string) => findSession(db, clock, cookie),
    sessionsOf,
    endOwnSession,
    share,
    signOut: (person: Person) => store.endSession(db, person.sessionHash),
    signOutEverywhere: (person: Person) => store.endSessions(db.pool, person.id, null),
    ...signIn,
    ...linksService(needs, signIn),
    ...securityService(needs, signIn),
    ...staffService(needs),
    ...slipsService(needs),
  };
}
