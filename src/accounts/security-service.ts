import { inTransaction } from '../platform/db.js';
import { hashPassword } from '../platform/password.js';
import { newRecoveryCodes, secretBytes, stepOf } from './codes.js';
import * as codes from './codes-store.js';
import { limited, limits } from './guess-limits.js';
import type { AccountsNeeds } from './needs.js';
import { weaknessOf } from './passwords.js';
import { hashRecoveryCode } from './proofs.js';
import { requirePermission } from './require-permission.js';
import { openSession, type Person, type Visit } from './sessions.js';
import type { SignInService } from './sign-in-service.js';
import { setOwnPassword } from './staff-store.js';
import { endSessions } from './store.js';

/** What staff do about their own password and codes. Each of it ends all other sessions and gives the own one a new cookie. */
export function securityService({ db, clock, installation }: Pick<AccountsNeeds, 'db' | 'clock' | 'installation'>, signIn: SignInService) {
  async function security(person: Person) {
    requirePermission(person, 'keep-password');
    const [hasCodes, left, forAll] = await Promise.all([
      signIn.hasCodes(person),
      codes.recoveryCodesLeft(db, person.id),
      codes.codesForAll(db),
    ]);
    return { codes: hasCodes ? { left } : null, forAll };
  }

  /** A link that somebody made for this account is dead from then on. */
  async function changePassword(person: Visit, old: string, password: string): Promise<{ cookie: string } | { weak: string } | 'wrong'> {
    requirePermission(person, 'keep-password');
    const proofs = await codes.findProofs(db.pool, person.id);
    const weak = await weaknessOf(password, [person.displayName, proofs?.signInName ?? '']);
    if (!(await signIn.provesPassword(person, old))) return 'wrong';
    if (weak !== null) return { weak };
    if (old.normalize('NFKC') === password.normalize('NFKC')) return { weak: 'That is the password you have. Choose another.' };
    const passwordHash = await hashPassword(password);
    return await inTransaction(db, async (sql) => {
      await setOwnPassword(sql, person.id, passwordHash);
      await endSessions(sql, person.id, null);
      return { cookie: await openSession(sql, person.id, person.role, clock.now(), { shared: person.shared, confirmed: true }) };
    });
  }

  /** @returns the new cookie and the recovery codes, told this once; null when the code does not fit, `before` when codes were set up already */
  async function setUpCodes(
    person: Visit,
    secret: string,
    code: string,
  ): Promise<{ cookie: string; recovery: string[] } | 'before' | null> {
    requirePermission(person, 'keep-password');
    const now = clock.now();
    const step = await limited(
      db,
      now,
      [limits.codeOf(person.id)],
      (found) => found !== null,
      async () => stepOf(secretBytes(secret), code.replace(/[\s-]/g, ''), now),
    );
    if (step === null) return null;
    const recovery = newRecoveryCodes();
    const hashes = await Promise.all(recovery.map((one) => hashRecoveryCode(one, installation.phraseSalt)));
    return await inTransaction(db, async (sql) => {
      if (!(await codes.setSecret(sql, person.id, secretBytes(secret), step))) return 'before';
      await codes.setRecoveryCodes(sql, person.id, hashes);
      await endSessions(sql, person.id, null);
      return { cookie: await openSession(sql, person.id, person.role, now, { shared: person.shared, confirmed: true }), recovery };
    });
  }

  /** @returns which of the two does not fit, or the new cookie */
  async function dropCodes(person: Visit, password: string, code: string): Promise<{ cookie: string } | 'password' | 'code'> {
    const result = await signIn.proves(person, password, code);
    if (result !== 'yes') return result;
    return await inTransaction(db, async (sql) => {
      await codes.dropSecret(sql, person.id);
      await endSessions(sql, person.id, null);
      return { cookie: await openSession(sql, person.id, person.role, clock.now(), { shared: person.shared, confirmed: true }) };
    });
  }

  /** Ten new recovery codes, told this once; null for whoever has no codes. */
  async function renewRecoveryCodes(person: Person): Promise<string[] | null> {
    if (!(await signIn.hasCodes(person))) return null;
    const recovery = newRecoveryCodes();
    const hashes = await Promise.all(recovery.map((one) => hashRecoveryCode(one, installation.phraseSalt)));
    await inTransaction(db, (sql) => codes.setRecoveryCodes(sql, person.id, hashes));
    return recovery;
  }

  return { security, changePassword, setUpCodes, dropCodes, renewRecoveryCodes };
}
