import { createHash } from 'node:crypto';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { extract, pack } from 'tar-stream';
import { aboutName, mostBytes, sumsName, wholeName, type Entry } from './format.js';

/** Entries into the bytes of a tar and back. The last entry holds the sum of all bytes before it, so every byte is covered. */

const epoch = new Date(0);
const endBytes = 1024;
const tailBytes = 512 + 512 + endBytes;

/** One entry with its header and padding, and the end of a tar behind it. */
async function packed({ name, data }: Entry): Promise<Buffer> {
  const one = pack();
  one.entry({ name, mode: 0o600, mtime: epoch }, data);
  one.finalize();
  const parts: Buffer[] = [];
  for await (const part of one as AsyncIterable<Buffer>) parts.push(part);
  return Buffer.concat(parts);
}

const tailFor = (sum: string): Promise<Buffer> => packed({ name: wholeName, data: Buffer.from(`${sum}\n`) });

export async function* tarOf(entries: AsyncIterable<Entry>): AsyncGenerator<Buffer> {
  const hash = createHash('sha256');
  for await (const entry of entries) {
    const whole = await packed(entry);
    const bytes = whole.subarray(0, whole.length - endBytes);
    hash.update(bytes);
    yield bytes;
  }
  yield await tailFor(hash.digest('hex'));
}

/** Passes everything on, and throws at the end when the last entry does not hold the sum of what came before it. */
async function* summed(source: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const hash = createHash('sha256');
  let held: Buffer = Buffer.alloc(0);
  for await (const chunk of source) {
    const all = Buffer.concat([held, chunk]);
    const cut = Math.max(0, all.length - tailBytes);
    hash.update(all.subarray(0, cut));
    held = Buffer.from(all.subarray(cut));
    yield chunk;
  }
  const tail = await tailFor(hash.digest('hex'));
  if (!held.equals(tail)) throw new Error('its bytes do not agree with their sum, or its end is missing');
}

const mostOf = (name: string): number =>
  ({ [aboutName]: mostBytes.about, [sumsName]: mostBytes.sums, [wholeName]: 512 })[name] ?? mostBytes.piece;

/**
 * Reads a tar entry by entry. Only plain files with names of our own kind are taken, and nothing larger than we write.
 * @throws Error whose message ends the sentence `The backup is damaged: …`
 */
export async function* entriesOf(source: AsyncIterable<Uint8Array>): AsyncGenerator<Entry> {
  const reader = extract();
  const feeding = pipeline(Readable.from(summed(source)), reader);
  feeding.catch(() => undefined);
  for await (const entry of reader) {
    const { name, type, size = 0 } = entry.header;
    if (!/^(about\.json|sums\.json|whole\.sha256|tables\/[a-z_][a-z0-9_]{0,62}\/\d{5,7}\.copy\.gz)$/.test(name))
      throw new Error(`it holds ${JSON.stringify(name.slice(0, 100))}, which no backup does`);
    if (type !== 'file') throw new Error(`${name} in it is a ${String(type)} and not a plain file`);
    if (size > mostOf(name)) throw new Error(`${name} in it is larger than any that is written`);
    const parts: Buffer[] = [];
    for await (const part of entry as AsyncIterable<Buffer>) parts.push(part);
    yield { name, data: Buffer.concat(parts) };
  }
  await feeding;
}
