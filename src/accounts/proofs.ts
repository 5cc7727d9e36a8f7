import { createHash, createHmac, timingSafeEqual } from 'node:crypto';
import type { PoolClient } from 'pg';
import { hashPhrase } from '../platform/password.js';
import { readTyped, stepOf } from './codes.js';
import { useRecoveryCode, useStep, type Proofs } from './codes-store.js';

/** How a member of staff proves who they are beyond the password, and what is kept between the two steps. */

type Sql = Pick<PoolClient, 'query'>;

export const hashRecoveryCode = (code: string, salt: Buffer): Promise<Buffer> => hashPhrase(code, salt);

/** Whether what was typed is a code, or a recovery code, of theirs that was not used before. It is used up by that. */
export async function provesCode(sql: Sql, { id, totpSecret }: Proofs, text: string, now: Date, salt: Buffer): Promise<boolean> {
  if (totpSecret === null) return false;
  const typed = readTyped(text);
  if (typed.kind === 'neither') return false;
  if (typed.kind === 'recovery') return await useRecoveryCode(sql, id, await hashRecoveryCode(typed.text, salt), now);
  const step = stepOf(totpSecret, typed.text, now);
  return step !== null && (await useStep(sql, id, totpSecret, step));
}

const pendingMilliseconds = 5 * 60_000;

/** Says that the password of this person was right a moment ago, and nothing else; kept by the browser until the code is typed. */
export function pendingToken(proofs: Proofs, shared: boolean, now: Date, secret: Buffer): string {
  const head = `${proofs.id}.${now.getTime() + pendingMilliseconds}.${shared ? 1 : 0}`;
  return `${head}.${seal(head, proofs, secret).toString('base64url')}`;
}

/** Whose token it is, before the seal is looked at; null for what is none or has run out. */
export function readPending(token: string, now: Date): { personId: number; shared: boolean; head: string; sealed: Buffer } | null {
  const parts = /^((\d{1,9})\.(\d{13})\.([01]))\.([\w-]{43})$/.exec(token);
  if (parts === null || Number(parts[3]) < now.getTime()) return null;
  return {
    personId: Number(parts[2]),
    shared: parts[4] === '1',
    head: String(parts[1]),
    sealed: Buffer.from(String(parts[5]), 'base64url'),
  };
}

/** Whether the seal is ours and fits the person as they stand now. */
export const isSealed = ({ head, sealed }: { head: string; sealed: Buffer }, proofs: Proofs, secret: Buffer): boolean =>
  timingSafeEqual(sealed, seal(head, proofs, secret));

/** A new password, other codes, or a code that was used break the seal. */
function seal(head: string, { passwordHash, totpSecret, totpStep }: Proofs, secret: Buffer): Buffer {
  const standing = createHash('sha256')
    .update(JSON.stringify([passwordHash, totpSecret?.toString('base64') ?? null, totpStep]))
    .digest('base64');
  return createHmac('sha256', secret).update(`second step\n${head}\n${standing}`).digest();
}
