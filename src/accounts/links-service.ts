import type { Role } from '../core/permissions.js';
import { inTransaction } from '../platform/db.js';
import { hashPassword } from '../platform/password.js';
import { findProofs } from './codes-store.js';
import { limited, limits } from './guess-limits.js';
import type { AccountsNeeds } from './needs.js';
import { hoursFrom, newPasswordHours, newToken, tokenHash } from './one-time-link.js';
import { weaknessOf } from './passwords.js';
import { requirePermission } from './require-permission.js';
import { openSession, type Person } from './sessions.js';
import { signInNameOf } from './sign-in-name.js';
import type { SignedIn, SignInService } from './sign-in-service.js';
import * as store from './staff-store.js';
import { endSessions } from './store.js';

/** One-time links: of the first administrator, of whoever is invited, and in place of a forgotten password. */

const invitationHours = 24;

const bytes = (buffer: Buffer) => new Uint8Array(buffer);

export function linksService({ db, clock }: Pick<AccountsNeeds, 'db' | 'clock'>, { afterPassword }: SignInService) {
  const until = (hours: number) => hoursFrom(clock.now(), hours);

  /** The token of a fresh one-time link, or null when there is an administrator already. Older links stop working. */
  async function setUpToken(): Promise<string | null> {
    if (await store.hasAdministrator(db)) return null;
    const token = newToken();
    await store.setSetUpToken(db, bytes(tokenHash(token)), until(invitationHours));
    return token;
  }

  const isSetUpToken = (token: string, address: string): Promise<boolean> =>
    limited(
      db,
      clock.now(),
      [limits.link(address)],
      (known) => known,
      () => store.isSetUpToken(db, bytes(tokenHash(token)), clock.now()),
    );

  /** @returns the first administrator's session; `taken` when the name is, `used` when the link was; or what is wrong with the password */
  async function setUp(
    token: string,
    name: string,
    password: string,
    address: string,
  ): Promise<{ cookie: string; personId: number } | { weak: string } | 'used' | 'taken'> {
    if (!(await isSetUpToken(token, address))) return 'used';
    const weak = await weaknessOf(password, [name]);
    if (weak !== null) return { weak };
    const now = clock.now();
    const passwordHash = await hashPassword(password);
    return await inTransaction(db, async (sql) => {
      if (!(await store.useSetUpToken(sql, tokenHash(token), now))) return 'used';
      const id = await store.addStaff(sql, {
        displayName: name,
        signInName: signInNameOf(name),
        role: 'administrator',
        passwordHash,
        invitationHash: null,
        invitationExpiresAt: null,
        now,
      });
      if (id === null) throw new NameTaken();
      return { cookie: await openSession(sql, id, 'administrator', now, { confirmed: true }), personId: id };
    }).catch((error: unknown) => {
      if (error instanceof NameTaken) return 'taken';
      throw error;
    });
  }

  /** @returns the token of a one-time link; `taken` when somebody with that name has a password already. */
  async function invite(person: Person, name: string, role: Role): Promise<{ token: string; until: Date; personId: number } | 'taken'> {
    requirePermission(person, 'invite-staff');
    const token = newToken();
    const signInName = signInNameOf(name);
    const expires = until(invitationHours);
    const invited = {
      displayName: name,
      signInName,
      role,
      passwordHash: null,
      invitationHash: tokenHash(token),
      invitationExpiresAt: expires,
    };
    const made = await store.addStaff(db.pool, { ...invited, now: clock.now() });
    const personId = made ?? (await store.renewInvitation(db.pool, signInName, tokenHash(token), expires));
    return personId === null ? 'taken' : { token, until: expires, personId };
  }

  /** A link by which somebody chooses a new password; the old one works until then. @returns null when they are nobody here, or closed */
  async function newPasswordLink(person: Person, personId: number): Promise<{ token: string; until: Date; name: string } | null> {
    requirePermission(person, 'invite-staff');
    const token = newToken();
    const found = await findProofs(db.pool, personId);
    if (found === null) return null;
    const expires = until(found.passwordHash === null ? invitationHours : newPasswordHours);
    await store.setLink(db.pool, personId, tokenHash(token), expires);
    return { token, until: expires, name: found.displayName };
  }

  const invited = (token: string, address: string) =>
    limited(
      db,
      clock.now(),
      [limits.link(address)],
      (person) => person !== null,
      () => store.personByInvitation(db, bytes(tokenHash(token)), clock.now()),
    );

  /**
   * Uses a link: the new password holds, and all sessions end. Whoever has one-time codes is still asked for one.
   * @returns `used` when the link was used or ran out meanwhile; or what is wrong with the password
   */
  async function acceptInvitation(token: string, password: string, address: string): Promise<SignedIn | { weak: string } | 'used'> {
    const person = await invited(token, address);
    if (person === null) return 'used';
    const weak = await weaknessOf(password, [person.displayName, person.signInName ?? '']);
    if (weak !== null) return { weak };
    const passwordHash = await hashPassword(password);
    const id = await inTransaction(db, async (sql) => {
      const used = await store.useInvitation(sql, tokenHash(token), passwordHash, clock.now());
      if (used !== null) await endSessions(sql, used, null);
      return used;
    });
    const proofs = id === null ? null : await findProofs(db.pool, id);
    return proofs === null ? 'used' : await afterPassword(proofs, false);
  }

  return { setUpToken, isSetUpToken, setUp, invite, newPasswordLink, invited, acceptInvitation };
}

class NameTaken extends Error {}
