import { createHmac } from 'node:crypto';
import type { Visitor } from './app.js';

/** An authenticator, worked by hand from RFC 4226 section 5.3 and RFC 6238 section 4, apart from the library that the server uses. */

export function codeAt(base32: string, now: Date, stepsAhead = 0): string {
  const counter = Buffer.alloc(8);
  counter.writeBigUInt64BE(BigInt(Math.floor(now.getTime() / 30_000) + stepsAhead));
  const digest = createHmac('sha1', bytesOf(base32)).update(counter).digest();
  const offset = (digest[19] ?? 0) & 15;
  return String((digest.readUInt32BE(offset) & 0x7f_ff_ff_ff) % 1_000_000).padStart(6, '0');
}

/** RFC 4648 section 6. */
function bytesOf(base32: string): Buffer {
  const bits = [...base32].map((sign) => 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567'.indexOf(sign).toString(2).padStart(5, '0')).join('');
  return Buffer.from((bits.match(/.{8}/g) ?? []).map((byte) => parseInt(byte, 2)));
}

/** Sets up codes for somebody who is signed in, and has typed the password lately. */
export async function setUpCodes(visitor: Visitor, now: Date): Promise<{ secret: string; recovery: string[] }> {
  const page = await visitor.get('/me/codes');
  const secret = page.html.querySelector('input[name=secret]')?.getAttribute('value') ?? '';
  const done = await visitor.submit(page, '/me/codes', { code: codeAt(secret, now) });
  const recovery = done.html.querySelectorAll('.slip li').map((item) => item.text.trim());
  if (recovery.length !== 10) throw new Error(`codes were not set up: ${done.status} ${done.words.slice(0, 300)}`);
  return { secret, recovery };
}
