import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';
import { SetUpError, codeOf, explain } from '../set-up-error.js';
import {
  aboutName,
  aboutSchema,
  damaged,
  formatNumber,
  mostBytes,
  pieceName,
  sumsName,
  sumsSchema,
  wholeName,
  type About,
  type BackupReport,
  type Entry,
  type Sums,
} from './format.js';
import { hasWholeHeader, isSealed, unsealed, WrongPassphrase } from './sealing.js';
import { entriesOf } from './tar.js';
import { linesIn } from './write.js';

const unpacked = promisify(gunzip);

/** What is done with the parts of a backup as they are read. */
export interface Reader {
  about?(about: About): Promise<void> | void;
  /** A part of a table's rows, in order; tables come in the order of `about`. */
  rows?(table: string, copy: Buffer): Promise<void>;
}

interface Source {
  file: string;
  passphrase?: string | undefined;
}

/**
 * Reads a whole backup and checks every byte, sum and count of it. What the reader was given before a fault is found has to be undone by it.
 * @throws SetUpError when the file is not a backup, damaged, of a newer kind, or needs another passphrase; what the reader throws, as it is
 */
export async function readBackup({ file, passphrase }: Source, reader: Reader): Promise<BackupReport> {
  const { bytes, encrypted } = await look(file, passphrase);
  let about: About | undefined;
  let sums: Sums | undefined;
  const found: Sums = { rows: {}, entries: [] };
  let expected = { table: 0, number: 1 };
  for await (const entry of soundEntries({ file, passphrase: encrypted ? passphrase : undefined })) {
    if (entry.name === wholeName) continue;
    if (sums !== undefined) throw damaged(file, `${entry.name} comes after its end`);
    if (entry.name === sumsName) {
      sums = parsed(file, entry, sumsSchema);
      continue;
    }
    found.entries.push({ name: entry.name, bytes: entry.data.length, sha256: createHash('sha256').update(entry.data).digest('hex') });
    if (about === undefined) {
      about = aboutOf(file, entry);
      for (const { name } of about.tables) found.rows[name] = 0;
      await reader.about?.(about);
      continue;
    }
    expected = placeOf(file, about, entry, expected);
    const table = about.tables[expected.table]?.name as string;
    const copy = await unpackedPiece(file, entry);
    found.rows[table] = (found.rows[table] as number) + linesIn(copy);
    await reader.rows?.(table, copy);
    expected.number += 1;
  }
  if (about === undefined || sums === undefined) throw damaged(file, 'its end is missing');
  refuseDifferent(file, found, sums);
  return { file, bytes, encrypted, about, rows: found.rows };
}

/** Tells a backup from anything else by its first bytes, before the passphrase is worked on. */
async function look(file: string, passphrase: string | undefined): Promise<{ bytes: number; encrypted: boolean }> {
  const handle = await open(file, 'r').catch((error: unknown) => Promise.reject(unreadable(file, error)));
  try {
    const about = await handle.stat();
    if (!about.isFile()) throw new SetUpError(`${file} is not a file.`, 'Name the file of a backup.');
    const head = Buffer.alloc(4096);
    const { bytesRead } = await handle.read(head, 0, head.length, 0);
    const start = head.subarray(0, bytesRead);
    if (isSealed(start)) {
      if (!hasWholeHeader(start)) throw damaged(file, 'the beginning of its encryption is not whole');
      if (passphrase !== undefined) return { bytes: about.size, encrypted: true };
      throw new SetUpError(
        `The backup ${file} is encrypted.`,
        'Write its passphrase into a file, and name that file with --passphrase-file.',
      );
    }
    const name = start.subarray(0, aboutName.length + 1).toString('latin1');
    if (name !== `${aboutName}\0`)
      throw new SetUpError(`${file} is not a backup of Rungwise.`, 'Name a file that npx rungwise backup wrote.');
    return { bytes: about.size, encrypted: false };
  } finally {
    await handle.close();
  }
}

const unreadable = (file: string, error: unknown): SetUpError =>
  new SetUpError(
    codeOf(error) === 'ENOENT' ? `There is no file ${file}.` : `The file ${file} cannot be read: ${explain(error)}.`,
    'Check its name, and that this user may read it.',
    { cause: error },
  );

/** The entries, with whatever their reading throws said in words. */
async function* soundEntries({ file, passphrase }: Source): AsyncGenerator<Entry> {
  const stored = createReadStream(file, { highWaterMark: 2 ** 18 }) as AsyncIterable<Buffer>;
  const entries = entriesOf(passphrase === undefined ? stored : unsealed(stored, passphrase));
  try {
    for (;;) {
      const next = await entries.next().catch((error: unknown) => Promise.reject(inWords(file, error)));
      if (next.done === true) return;
      yield next.value;
    }
  } finally {
    await entries.return(undefined).catch(() => undefined);
  }
}

function inWords(file: string, error: unknown): SetUpError {
  if (error instanceof WrongPassphrase)
    return new SetUpError(`The passphrase does not open the backup ${file}.`, 'Give the one that it was made with. Nothing was changed.', {
      cause: error,
    });
  if (['EIO', 'EACCES', 'EISDIR', 'ESTALE'].includes(codeOf(error))) return unreadable(file, error);
  // What the libraries say of bytes that make no sense helps nobody; it stays as the cause.
  const words = /tar header|gunzip|invalid tag|unexpected end|incorrect header/i.test(explain(error))
    ? 'its bytes were changed, or its end is missing'
    : explain(error);
  return damaged(file, words, error);
}

function parsed<T>(file: string, entry: Entry, schema: { parse(value: unknown): T }): T {
  try {
    return schema.parse(JSON.parse(entry.data.toString('utf8')));
  } catch (error) {
    throw damaged(file, `${entry.name} in it is not as it is written`, error);
  }
}

function aboutOf(file: string, entry: Entry): About {
  if (entry.name !== aboutName) throw damaged(file, `it begins with ${entry.name}`);
  const rough = parsed(file, entry, { parse: (value) => value as { format?: unknown; formatNumber?: unknown } | null });
  if (rough?.format === 'rungwise-backup' && typeof rough.formatNumber === 'number' && rough.formatNumber > formatNumber) {
    throw new SetUpError(
      `The backup ${file} was written by a newer Rungwise: its format is number ${rough.formatNumber}, and this program reads ${formatNumber}.`,
      'Install the newer Rungwise and restore with that.',
    );
  }
  const about = parsed(file, entry, aboutSchema);
  const names = about.tables.map(({ name }) => name);
  if (new Set(names).size < names.length) throw damaged(file, 'it names a table twice');
  return about;
}

/** Pieces are numbered without a gap, and tables come in their order: @returns which one this is */
function placeOf(file: string, about: About, entry: Entry, expected: { table: number; number: number }): { table: number; number: number } {
  for (let { table, number } = expected; table < about.tables.length; table += 1, number = 1) {
    const at = about.tables[table];
    if (at !== undefined && !at.leftOut && entry.name === pieceName(at.name, number)) return { table, number };
  }
  throw damaged(file, `${entry.name} does not stand where it belongs`);
}

async function unpackedPiece(file: string, { name, data }: Entry): Promise<Buffer> {
  return await unpacked(data, { maxOutputLength: mostBytes.unpacked }).catch((error: unknown) => {
    const large = codeOf(error) === 'ERR_BUFFER_TOO_LARGE';
    throw damaged(file, large ? `${name} unpacks to more than is ever packed` : `${name} in it cannot be unpacked`, error);
  });
}

function refuseDifferent(file: string, found: Sums, sums: Sums): void {
  const entries = new Map(sums.entries.map((entry) => [entry.name, entry]));
  for (const { name, bytes, sha256 } of found.entries) {
    const noted = entries.get(name);
    if (noted?.bytes !== bytes || noted.sha256 !== sha256) throw damaged(file, `${name} in it does not agree with its sum`);
  }
  if (found.entries.length !== sums.entries.length) throw damaged(file, 'a part of it is missing');
  const names = Object.keys(found.rows);
  const wrong = names.find((name) => found.rows[name] !== sums.rows[name]);
  if (wrong !== undefined || names.length !== Object.keys(sums.rows).length)
    throw damaged(file, `the rows of ${wrong ?? 'its tables'} are not as many as were counted`);
}
