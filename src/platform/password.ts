import { hash, hashRaw, verify, type Algorithm } from '@node-rs/argon2';

/**
 * Slow hashes, all by argon2id with the settings OWASP's password storage guide gives as its minimum:
 * 19 MiB, 2 passes, 1 lane.
 */
// 2 is argon2id: the library exports the name as a const enum, which this compiler setting cannot read.
const settings = { algorithm: 2 as Algorithm, memoryCost: 19_456, timeCost: 2, parallelism: 1 };

export async function hashPassword(password: string): Promise<string> {
  return await hash(password.normalize('NFKC'), settings);
}

/** Somebody unknown costs the same time as a wrong password, so that names cannot be tried out by the clock. */
export async function passwordMatches(stored: string | null, password: string): Promise<boolean> {
  // Asked for either way: the first who comes pays for it, known or not.
  const nobodys = await unknownHash();
  const matches = await verify(stored ?? nobodys, password.normalize('NFKC'));
  return matches && stored !== null;
}

/** True when a stored hash was made with weaker settings than today's. */
export function needsRehash(stored: string): boolean {
  return !stored.startsWith(`$argon2id$v=19$m=${settings.memoryCost},t=${settings.timeCost},p=${settings.parallelism}$`);
}

/** A return phrase is looked up by its hash, so its salt is one for the installation; the phrase itself holds 70 bits. */
export async function hashPhrase(canonical: string, salt: Buffer): Promise<Buffer> {
  return await hashRaw(canonical, { ...settings, salt });
}

let unknown: Promise<string> | undefined;
const unknownHash = (): Promise<string> => (unknown ??= hashPassword('nobody has this password'));
