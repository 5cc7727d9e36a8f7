import { randomInt } from 'node:crypto';
import { Secret, TOTP } from 'otpauth';
import { codeSigns } from '../core/join-code.js';

/**
 * One-time codes of an authenticator (RFC 6238: SHA-1, six digits, a new one each 30 seconds, which is what all of them understand), and
 * the recovery codes that stand in for a lost one.
 */

const period = 30;

/** 160 random bits, as RFC 4226 recommends. */
export const newSecret = (): string => new Secret({ size: 20 }).base32;
export const isSecret = (text: string): boolean => /^[A-Z2-7]{32}$/.test(text);
export const secretBytes = (base32: string): Buffer => Buffer.from(Secret.fromBase32(base32).bytes);

/** The address that an authenticator reads from the QR code. */
export const secretAddress = (base32: string, name: string, server: string): string =>
  new TOTP({ issuer: server, label: name, secret: base32 }).toString();

/**
 * Which step of 30 seconds since 1970 a code belongs to: this one, the one before or the one after, since clocks differ.
 * @returns null for a code of none of them
 */
export function stepOf(secret: Uint8Array, code: string, now: Date): number | null {
  const delta = TOTP.validate({
    token: code,
    secret: new Secret({ buffer: new Uint8Array(secret).buffer }),
    digits: 6,
    period,
    timestamp: now.getTime(),
    window: 1,
  });
  return delta === null ? null : Math.floor(now.getTime() / 1000 / period) + delta;
}

/** What somebody typed where a code is asked for. */
export type TypedCode = { kind: 'code'; text: string } | { kind: 'recovery'; text: string } | { kind: 'neither' };

export function readTyped(text: string): TypedCode {
  const signs = text.normalize('NFKC').toUpperCase().replace(/[\s-]/g, '');
  if (/^\d{6}$/.test(signs)) return { kind: 'code', text: signs };
  return [...signs].length === recoveryLength && [...signs].every((sign) => codeSigns.includes(sign))
    ? { kind: 'recovery', text: signs }
    : { kind: 'neither' };
}

export const recoveryCount = 10;
/** Twelve of 31 signs: 59 bits each, and hashed as slowly as passwords. */
const recoveryLength = 12;

export const newRecoveryCodes = (): string[] =>
  Array.from({ length: recoveryCount }, () =>
    Array.from({ length: recoveryLength }, () => codeSigns[randomInt(codeSigns.length)]).join(''),
  );
