import { parseArgs, type ParseArgsConfig } from 'node:util';
import { rowsIn, type BackupReport } from '../platform/backup/index.js';
import { SetUpError, explain } from '../platform/set-up-error.js';
import type { CommandIo } from './command.js';

/** What the three commands for backups share. */

export interface Asked {
  file: string;
  passphraseFile: string | undefined;
  replace: boolean;
  json: boolean;
}

/** @returns what was asked, or what is wrong with it */
export function understood(args: readonly string[], replaceable: boolean): Asked | string {
  const options: NonNullable<ParseArgsConfig['options']> = {
    json: { type: 'boolean' },
    'passphrase-file': { type: 'string' },
    ...(replaceable ? { replace: { type: 'boolean' as const } } : {}),
  };
  try {
    const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
    const [file, ...more] = positionals;
    if (file === undefined || file === '' || file.includes('\0')) return 'Name the file.';
    if (more.length > 0) return 'Name one file.';
    const passphraseFile = values['passphrase-file'] as string | undefined;
    return { file, passphraseFile, replace: values['replace'] === true, json: values['json'] === true };
  } catch (error) {
    return error instanceof Error ? (error.message.split('\n')[0] ?? '') : 'The command was not understood.';
  }
}

export function sayFault(error: unknown, io: CommandIo): void {
  io.err(error instanceof SetUpError ? `${error.message}\n${error.advice}` : `The database could not be used: ${explain(error)}`);
}

export const grouped = (count: number): string => count.toLocaleString('en-GB');

export function sizeWords(bytes: number): string {
  if (bytes < 1_000_000) return `${Math.max(1, Math.round(bytes / 1000))} kB`;
  return bytes < 1_000_000_000 ? `${(bytes / 1_000_000).toFixed(1)} MB` : `${(bytes / 1_000_000_000).toFixed(1)} GB`;
}

/** `1.2 MB, 12,345 rows, of 2026-11-28 02:30 UTC, encrypted`; people are named where a backup knows of them. */
export function reportWords({ bytes, rows, about, encrypted }: BackupReport): string {
  const people = rows['person'] === undefined ? '' : `${grouped(rows['person'])} people, `;
  const taken = about.takenAt.slice(0, 16).replace('T', ' ');
  return `${people}${grouped(rowsIn(rows))} rows, ${sizeWords(bytes)}, taken ${taken} UTC by Rungwise ${about.program.version}, ${encrypted ? 'encrypted' : 'not encrypted'}`;
}

export const reportJson = ({ file, bytes, rows, about, encrypted }: BackupReport): Record<string, unknown> => ({
  file,
  bytes,
  encrypted,
  takenAt: about.takenAt,
  program: about.program.version,
  migrations: about.migrations.map(({ name }) => name),
  leftOut: about.tables.filter(({ leftOut }) => leftOut).map(({ name }) => name),
  rows,
});
