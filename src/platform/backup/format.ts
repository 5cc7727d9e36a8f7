import { z } from 'zod';
import { SetUpError } from '../set-up-error.js';

/**
 * The file of a backup: a tar of `about.json`, then each table's rows as PostgreSQL's COPY writes them, cut into entries
 * `tables/<name>/<nnnnn>.copy.gz`, then `sums.json`, and last `whole.sha256`, the sum of everything before it.
 */

/** Raised when a program that knows only the lower number could not read the file. */
export const formatNumber = 1;

export const aboutName = 'about.json';
export const sumsName = 'sums.json';
export const wholeName = 'whole.sha256';

/** Most bytes of an entry as it lies in the file, by its kind; what is larger is not read. And of a piece of a table unpacked. */
export const mostBytes = { about: 2 ** 20, sums: 2 ** 26, piece: 2 ** 20 + 2 ** 16, unpacked: 2 ** 20 };

/** Tables whose rows are left out, each with the reason. */
export const leftOut: Readonly<Record<string, string>> = {
  session: 'after a restore everybody signs in again, so that a copied file lets nobody in',
  guess: 'counts of wrong guesses run out by themselves',
  pack_upload: 'a pack that waits for a decision can be sent again, and may be large',
};

const name = z.string().regex(/^[a-z_][a-z0-9_]{0,62}$/);
const hash = z.string().regex(/^[0-9a-f]{64}$/);
const count = z.number().int().nonnegative();

const column = z.strictObject({ name, type: z.string().max(100) });
const table = z.strictObject({ name, columns: z.array(column).max(1600), leftOut: z.boolean() });
/** As text, since it may be larger than a number is exact. */
const sequence = z.strictObject({ name, value: z.string().regex(/^\d{1,19}$/), called: z.boolean() });

export const aboutSchema = z.strictObject({
  format: z.literal('rungwise-backup'),
  formatNumber: z.literal(formatNumber),
  program: z.strictObject({ version: z.string().max(100) }),
  takenAt: z.iso.datetime(),
  /** Which installation it is of; null when its database is too old to say. */
  installation: z.uuid().nullable(),
  migrations: z
    .array(z.strictObject({ name: z.string().max(255), checksum: hash }))
    .min(1)
    .max(10_000),
  /** In the order in which they can be filled: a table comes after those it refers to. */
  tables: z.array(table).min(1).max(1000),
  sequences: z.array(sequence).max(1000),
});
export type About = z.output<typeof aboutSchema>;
export type BackupTable = z.output<typeof table>;
export type BackupSequence = z.output<typeof sequence>;

export const sumsSchema = z.strictObject({
  rows: z.record(name, count),
  entries: z.array(z.strictObject({ name: z.string().max(200), bytes: count, sha256: hash })).max(1_000_000),
});
export type Sums = z.output<typeof sumsSchema>;

export const pieceName = (tableName: string, number: number): string => `tables/${tableName}/${String(number).padStart(5, '0')}.copy.gz`;

/** Bytes under a name, as they lie in the tar. */
export interface Entry {
  name: string;
  data: Buffer;
}

/** What a backup holds, as it was written or read. */
export interface BackupReport {
  file: string;
  bytes: number;
  encrypted: boolean;
  about: About;
  rows: Record<string, number>;
}

export const rowsIn = (rows: Readonly<Record<string, number>>): number => Object.values(rows).reduce((sum, each) => sum + each, 0);

/** Gets a line from time to time on how far the work is. */
export type Progress = (line: string) => void;

export function damaged(file: string, what: string, cause?: unknown): SetUpError {
  return new SetUpError(
    `The backup ${file} is damaged: ${what}.`,
    'Copy the file again from where it came, or use another backup. Nothing was changed.',
    { cause },
  );
}
