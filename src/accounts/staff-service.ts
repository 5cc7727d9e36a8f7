import type { PoolClient } from 'pg';
import { RungwiseError } from '../core/errors.js';
import { inTransaction } from '../platform/db.js';
import { codesForAll, dropSecret, setCodesForAll } from './codes-store.js';
import type { AccountsNeeds } from './needs.js';
import { requirePermission } from './require-permission.js';
import type { Person } from './sessions.js';
import * as store from './staff-store.js';
import { endSessionNamed, endSessions, listSessions } from './store.js';

/** What administrators do about the accounts of staff. Nobody does it to themselves. */
export function staffService({ db, clock }: Pick<AccountsNeeds, 'db' | 'clock'>) {
  async function listStaff(person: Person) {
    requirePermission(person, 'invite-staff');
    const [people, forAll] = await Promise.all([store.listStaff(db), codesForAll(db)]);
    return { people, codesForAll: forAll };
  }

  /** @throws RungwiseError not-found for whoever is no member of staff */
  async function staffMember(person: Person, personId: number) {
    requirePermission(person, 'invite-staff');
    const [found] = await store.listStaff(db, personId);
    if (found === undefined) throw new RungwiseError('not-found');
    return { member: found, sessions: await listSessions(db, personId, person.sessionHash), own: personId === person.id };
  }

  /**
   * Does something about another member of staff. All administrators' rows are locked first, in order, so that two who close or demote each
   * other at one moment cannot both succeed: the second is no administrator any more when its turn comes. Since nobody does it to
   * themselves, whoever does it is left, and there is always an administrator.
   */
  async function aboutOther<T>(person: Person, personId: number, work: (sql: PoolClient) => Promise<T>): Promise<T> {
    requirePermission(person, 'invite-staff');
    return await inTransaction(db, async (sql) => {
      const administrators = await store.lockAdministrators(sql);
      if (!administrators.includes(person.id) || personId === person.id) throw new RungwiseError('not-allowed');
      if (!(await store.lockStaff(sql, personId))) throw new RungwiseError('not-found');
      return await work(sql);
    });
  }

  /** Rights change at once, and all sessions end: the next one begins under the new role. */
  const changeRole = (person: Person, personId: number, role: 'tutor' | 'administrator'): Promise<void> =>
    aboutOther(person, personId, async (sql) => {
      if (await store.setRole(sql, personId, role)) await endSessions(sql, personId, null);
    });

  /** Sessions and links are dead at once; classes and papers stay as they are. */
  const close = (person: Person, personId: number): Promise<void> =>
    aboutOther(person, personId, async (sql) => {
      await store.setClosed(sql, personId, clock.now());
      await endSessions(sql, personId, null);
    });

  const reopen = (person: Person, personId: number): Promise<void> =>
    aboutOther(person, personId, (sql) => store.setClosed(sql, personId, null));

  const signOutStaff = (person: Person, personId: number): Promise<void> =>
    aboutOther(person, personId, (sql) => endSessions(sql, personId, null));

  /** For whoever lost the device and the recovery codes. They sign in with the password alone until they set codes up anew. */
  const takeOffCodes = (person: Person, personId: number): Promise<void> =>
    aboutOther(person, personId, async (sql) => {
      await dropSecret(sql, personId);
      await endSessions(sql, personId, null);
    });

  async function signOutStaffSession(person: Person, personId: number, word: string): Promise<void> {
    requirePermission(person, 'invite-staff');
    if (!(await store.isStaff(db, personId))) throw new RungwiseError('not-found');
    await endSessionNamed(db, personId, word);
  }

  async function requireCodes(person: Person, all: boolean): Promise<void> {
    requirePermission(person, 'invite-staff');
    await setCodesForAll(db, all);
  }

  return { listStaff, staffMember, changeRole, close, reopen, signOutStaff, signOutStaffSession, takeOffCodes, requireCodes };
}
