import { createHash, randomBytes } from 'node:crypto';
import type { Role } from '../core/permissions.js';
import type { Clock } from '../platform/clock.js';
import { inTransaction, type Db } from '../platform/db.js';
import { hashPassword, needsRehash, passwordMatches } from '../platform/password.js';
import { limited, limits } from './guess-limits.js';
import { requirePermission } from './require-permission.js';
import { openSession, type Person } from './sessions.js';
import * as staff from './staff-store.js';
import { endSessions, personBySignInName, setPasswordHash } from './store.js';

/** Staff: the first administrator by a one-time link, the others by invitation, and signing in with a password. */

const linkHours = 24;
const hashOf = (token: string): Buffer => createHash('sha256').update(token).digest();
const bytes = (buffer: Buffer) => new Uint8Array(buffer);
const newToken = (): string => randomBytes(24).toString('base64url');

export function staffService({ db, clock }: { db: Db; clock: Clock }) {
  const until = () => new Date(clock.now().getTime() + linkHours * 3_600_000);

  /** The token of a fresh one-time link, or null when there is an administrator already. Older links stop working. */
  async function setUpToken(): Promise<string | null> {
    if (await staff.hasAdministrator(db)) return null;
    const token = newToken();
    await staff.setSetUpToken(db, bytes(hashOf(token)), until());
    return token;
  }

  const isSetUpToken = (token: string, address: string): Promise<boolean> =>
    limited(
      db,
      clock.now(),
      [limits.link(address)],
      (known) => known,
      () => staff.isSetUpToken(db, bytes(hashOf(token)), clock.now()),
    );

  /** @returns the cookie of the first administrator's session; `taken` when the name is, `used` when the link was. */
  async function setUp(token: string, name: string, password: string): Promise<{ cookie: string } | 'used' | 'taken'> {
    const now = clock.now();
    const passwordHash = await hashPassword(password);
    return await inTransaction(db, async (sql) => {
      if (!(await staff.useSetUpToken(sql, hashOf(token), now))) return 'used';
      const id = await staff.addStaff(sql, {
        displayName: name,
        signInName: signInNameOf(name),
        role: 'administrator',
        passwordHash,
        invitationHash: null,
        invitationExpiresAt: null,
        now,
      });
      if (id === null) throw new NameTaken();
      return { cookie: await openSession(sql, id, 'administrator', now) };
    }).catch((error: unknown) => {
      if (error instanceof NameTaken) return 'taken';
      throw error;
    });
  }

  async function signIn(name: string, password: string, address: string): Promise<string | null> {
    const now = clock.now();
    const signInName = signInNameOf(name);
    return await limited(
      db,
      now,
      [limits.password(address), limits.passwordOf(signInName, address)],
      (cookie) => cookie !== null,
      async () => {
        const person = await personBySignInName(db, signInName);
        if (!(await passwordMatches(person?.passwordHash ?? null, password)) || person === null) return null;
        if (needsRehash(person.passwordHash as string)) await setPasswordHash(db, person.id, await hashPassword(password));
        return await openSession(db.pool, person.id, person.role as Role, now);
      },
    );
  }

  /** @returns the token of a one-time link; `taken` when somebody with that name has a password already. */
  async function invite(person: Person, name: string, role: Role): Promise<{ token: string; until: Date } | 'taken'> {
    requirePermission(person, 'invite-staff');
    const token = newToken();
    const signInName = signInNameOf(name);
    const expires = until();
    const id = await staff.addStaff(db.pool, {
      displayName: name,
      signInName,
      role,
      passwordHash: null,
      invitationHash: hashOf(token),
      invitationExpiresAt: expires,
      now: clock.now(),
    });
    if (id === null && !(await staff.renewInvitation(db.pool, signInName, hashOf(token), expires))) return 'taken';
    return { token, until: expires };
  }

  const invited = (token: string, address: string) =>
    limited(
      db,
      clock.now(),
      [limits.link(address)],
      (person) => person !== null,
      () => staff.personByInvitation(db, bytes(hashOf(token)), clock.now()),
    );

  /** @returns the cookie of a new session, or null when the link was used or ran out. */
  async function acceptInvitation(token: string, password: string): Promise<string | null> {
    const now = clock.now();
    const passwordHash = await hashPassword(password);
    return await inTransaction(db, async (sql) => {
      const id = await staff.useInvitation(sql, hashOf(token), passwordHash, now);
      if (id === null) return null;
      await endSessions(sql, id, null);
      return await openSession(sql, id, 'tutor', now);
    });
  }

  async function listStaff(person: Person) {
    requirePermission(person, 'invite-staff');
    return await staff.listStaff(db);
  }

  return { setUpToken, isSetUpToken, setUp, signIn, invite, invited, acceptInvitation, listStaff };
}

class NameTaken extends Error {}

/** Names are compared without regard to case and to doubled spaces. */
export const signInNameOf = (name: string): string => name.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase();
