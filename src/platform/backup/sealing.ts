import { createCipheriv, createDecipheriv, createHash, randomBytes, scrypt } from 'node:crypto';
import { ReadableStream } from 'node:stream/web';
import { Decrypter, Encrypter, Stanza, type Identity, type Recipient } from 'age-encryption';

/**
 * Encryption with a passphrase, in the open format age v1 (https://age-encryption.org/v1), so that other tools open the file
 * too. The key is stretched by Node's scrypt, off the main thread: the library's own would keep a server silent for two seconds.
 */

/** Base-2 logarithm of scrypt's cost: 256 MB and a second. What asks for more is refused, for it may be made to exhaust us. */
const workFactor = 18;
const label = 'age-encryption.org/v1/scrypt';
const first = 'age-encryption.org/v1\n';
const unpadded = (bytes: Buffer): string => bytes.toString('base64').replace(/=+$/, '');

/** The last key that was stretched: a backup is read back after it is written, and a restore reads it twice. */
let last: { of: string; key: Promise<Buffer> } | undefined;

function stretched(passphrase: string, salt: Buffer, logN: number): Promise<Buffer> {
  const of = createHash('sha256')
    .update(JSON.stringify([passphrase, salt.toString('hex'), logN]))
    .digest('hex');
  if (last?.of !== of) last = { of, key: stretch(passphrase, salt, logN) };
  const { key } = last;
  key.catch(() => (last = undefined));
  return key;
}

function stretch(passphrase: string, salt: Buffer, logN: number): Promise<Buffer> {
  const options = { N: 2 ** logN, r: 8, p: 1, maxmem: 2 ** (logN + 10) + 2 ** 20 };
  return new Promise((resolve, reject) => {
    scrypt(passphrase, Buffer.concat([Buffer.from(label), salt]), 32, options, (error, key) => (error ? reject(error) : resolve(key)));
  });
}

// Each key is used for one message only, so age's nonce is twelve zeros.
const nonce = Buffer.alloc(12);
const cipher = 'chacha20-poly1305';

function recipientOf(passphrase: string): Recipient {
  return {
    wrapFileKey: async (fileKey) => {
      const salt = randomBytes(16);
      const seal = createCipheriv(cipher, await stretched(passphrase, salt, workFactor), nonce, { authTagLength: 16 });
      const body = Buffer.concat([seal.update(fileKey), seal.final(), seal.getAuthTag()]);
      return [new Stanza(['scrypt', unpadded(salt), String(workFactor)], body)];
    },
  };
}

function identityOf(passphrase: string): Identity {
  return {
    unwrapFileKey: async (stanzas) => {
      const [stanza, ...others] = stanzas;
      const [kind, salt = '', logN = ''] = stanza?.args ?? [];
      if (stanza === undefined || kind !== 'scrypt' || others.length > 0) return null;
      if (!/^[A-Za-z0-9+/]{22}$/.test(salt) || !/^([1-9]|1[0-8])$/.test(logN) || stanza.body.length !== 32) return null;
      const key = await stretched(passphrase, Buffer.from(salt, 'base64'), Number(logN));
      const open = createDecipheriv(cipher, key, nonce, { authTagLength: 16 });
      open.setAuthTag(stanza.body.subarray(16));
      try {
        return Buffer.concat([open.update(stanza.body.subarray(0, 16)), open.final()]);
      } catch {
        return null;
      }
    },
  };
}

/** @param head the first bytes of a file */
export const isSealed = (head: Buffer): boolean => head.subarray(0, first.length).toString('latin1') === first;

/** The library reads a header to its end however long it is, so its end must lie within the first bytes. */
export const hasWholeHeader = (head: Buffer): boolean => /\n--- [A-Za-z0-9+/]{43}\n/.test(head.toString('latin1'));

// The library names the stream by the browser's type, which is the same thing.
type WebStream = Parameters<Encrypter['encrypt']>[0];
const streamOf = (source: AsyncIterable<Uint8Array>): WebStream => ReadableStream.from(source) as unknown as WebStream;
const piped = (stream: object): AsyncIterable<Uint8Array> => stream as AsyncIterable<Uint8Array>;

export async function* sealed(source: AsyncIterable<Uint8Array>, passphrase: string): AsyncGenerator<Uint8Array> {
  const encrypter = new Encrypter();
  encrypter.addRecipient(recipientOf(passphrase));
  yield* piped(await encrypter.encrypt(streamOf(source)));
}

export class WrongPassphrase extends Error {}

/** @throws WrongPassphrase before the first byte; any other error when the bytes were changed or cut */
export async function* unsealed(source: AsyncIterable<Uint8Array>, passphrase: string): AsyncGenerator<Uint8Array> {
  const decrypter = new Decrypter();
  decrypter.addIdentity(identityOf(passphrase));
  const opened = await decrypter.decrypt(streamOf(source)).catch((error: unknown) => {
    if (/no identity matched/.test(String(error))) throw new WrongPassphrase();
    throw error;
  });
  yield* piped(opened);
}
