import { hashPassword, needsRehash, passwordMatches } from '../platform/password.js';
import { findProofs, type Proofs } from './codes-store.js';
import { limited, limits } from './guess-limits.js';
import type { AccountsNeeds } from './needs.js';
import { isSealed, pendingToken, provesCode, readPending } from './proofs.js';
import { requirePermission } from './require-permission.js';
import { openSession, type Person } from './sessions.js';
import { signInNameOf } from './sign-in-name.js';
import { confirmSession, personBySignInName, setPasswordHash } from './store.js';

/** What came of a try. `personId` is for the log: whose name or account it was, if anybody's. */
export type SignedIn =
  | { done: 'in'; cookie: string; shared: boolean; personId: number }
  | { done: 'code'; pending: string; personId: number }
  | { done: 'no'; personId: number | null };

/** Staff signing in, in one step or two, and typing the password again. */
export function signInService({ db, clock, installation }: Pick<AccountsNeeds, 'db' | 'clock' | 'installation'>) {
  const { cookieSecret, phraseSalt } = installation;

  /** Opens a session, or asks for the code of whoever has codes. */
  async function afterPassword(proofs: Proofs, shared: boolean): Promise<SignedIn> {
    const now = clock.now();
    if (proofs.totpSecret !== null) return { done: 'code', pending: pendingToken(proofs, shared, now, cookieSecret), personId: proofs.id };
    const cookie = await openSession(db.pool, proofs.id, proofs.role, now, { shared, confirmed: true });
    return { done: 'in', cookie, shared, personId: proofs.id };
  }

  /** An unknown name, a wrong password and a closed account get one answer and cost the same work. */
  async function signIn(name: string, password: string, shared: boolean, address: string): Promise<SignedIn> {
    const signInName = signInNameOf(name);
    return await limited(
      db,
      clock.now(),
      [limits.password(address), limits.passwordOf(signInName, address)],
      ({ done }) => done !== 'no',
      async (): Promise<SignedIn> => {
        const person = await personBySignInName(db, signInName);
        const matches = await passwordMatches(person?.passwordHash ?? null, password);
        const proofs = matches && person !== null ? await findProofs(db.pool, person.id) : null;
        if (proofs === null) return { done: 'no', personId: person?.id ?? null };
        if (!needsRehash(proofs.passwordHash as string)) return await afterPassword(proofs, shared);
        const passwordHash = await hashPassword(password);
        await setPasswordHash(db.pool, proofs.id, passwordHash);
        return await afterPassword({ ...proofs, passwordHash }, shared);
      },
    );
  }

  /** Whose code is waited for; null when nobody's is, or no longer. */
  async function awaited(pending: string): Promise<{ proofs: Proofs; shared: boolean } | null> {
    const read = readPending(pending, clock.now());
    const proofs = read === null ? null : await findProofs(db.pool, read.personId);
    if (read === null || proofs === null || proofs.totpSecret === null) return null;
    return isSealed(read, proofs, cookieSecret) ? { proofs, shared: read.shared } : null;
  }

  /** The second step. @returns null when the first was too long ago, or something changed meanwhile */
  async function signInWithCode(pending: string, code: string): Promise<SignedIn | null> {
    const found = await awaited(pending);
    if (found === null) return null;
    const { proofs, shared } = found;
    return await limited(
      db,
      clock.now(),
      [limits.codeOf(proofs.id)],
      ({ done }) => done === 'in',
      async (): Promise<SignedIn> => {
        const now = clock.now();
        if (!(await provesCode(db.pool, proofs, code, now, phraseSalt))) return { done: 'no', personId: proofs.id };
        const cookie = await openSession(db.pool, proofs.id, proofs.role, now, { shared, confirmed: true });
        return { done: 'in', cookie, shared, personId: proofs.id };
      },
    );
  }

  /** Whether the password, and the code of whoever has codes, are theirs. Limited, so that a browser left open is no place to guess. */
  async function proves(person: Person, password: string, code: string): Promise<'yes' | 'password' | 'code'> {
    requirePermission(person, 'keep-password');
    const now = clock.now();
    return await limited(
      db,
      now,
      [limits.confirm(person.id)],
      (result) => result === 'yes',
      async () => {
        const proofs = await findProofs(db.pool, person.id);
        if (!(await passwordMatches(proofs?.passwordHash ?? null, password)) || proofs === null) return 'password';
        if (proofs.totpSecret === null) return 'yes';
        return await limited(
          db,
          now,
          [limits.codeOf(person.id)],
          (right) => right === 'yes',
          async () => ((await provesCode(db.pool, proofs, code, now, phraseSalt)) ? 'yes' : 'code'),
        );
      },
    );
  }

  /** Whether the password is theirs, where the code is asked for by the page itself. */
  async function provesPassword(person: Person, password: string): Promise<boolean> {
    requirePermission(person, 'keep-password');
    return await limited(
      db,
      clock.now(),
      [limits.confirm(person.id)],
      (right) => right,
      async () => await passwordMatches((await findProofs(db.pool, person.id))?.passwordHash ?? null, password),
    );
  }

  async function confirm(person: Person, password: string, code: string): Promise<'yes' | 'password' | 'code'> {
    const result = await proves(person, password, code);
    if (result === 'yes') await confirmSession(db, person.sessionHash, clock.now());
    return result;
  }

  async function hasCodes(person: Person): Promise<boolean> {
    requirePermission(person, 'keep-password');
    return ((await findProofs(db.pool, person.id))?.totpSecret ?? null) !== null;
  }

  return {
    signIn,
    awaitsCode: async (pending: string) => (await awaited(pending)) !== null,
    signInWithCode,
    afterPassword,
    proves,
    provesPassword,
    confirm,
    hasCodes,
  };
}

export type SignInService = ReturnType<typeof signInService>;
