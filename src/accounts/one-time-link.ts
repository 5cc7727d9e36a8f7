import { createHash, randomBytes } from 'node:crypto';

/** Tokens of one-time links: 192 random bits, of which only the SHA-256 is kept. */

export const newToken = (): string => randomBytes(24).toString('base64url');
export const tokenHash = (token: string): Buffer => createHash('sha256').update(token).digest();

export const hoursFrom = (now: Date, hours: number): Date => new Date(now.getTime() + hours * 3_600_000);

/** Whoever has forgotten a password stands beside the administrator, or hangs on the telephone. */
export const newPasswordHours = 1;
