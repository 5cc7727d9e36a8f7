import { parseArgs, type ParseArgsConfig } from 'node:util';
import { bytesText } from '../core/words.js';
import { rowsIn, type BackupReport } from '../platform/backup/index.js';
import { SetUpError, explain } from '../platform/set-up-error.js';
import type { Command, CommandIo } from './command.js';

/** What the three commands for backups share. */

export interface Asked {
  file: string;
  passphraseFile: string | undefined;
  replace: boolean;
  json: boolean;
}

/** @returns what was asked, or what is wrong with it */
function understood(args: readonly string[], replaceable: boolean): Asked | string {
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

interface BackupCommand {
  usage: string;
  /** Whether it takes --replace. */
  replaceable?: boolean;
  /** Answered when the work fails; 2 if absent. */
  failed?: 1 | 2;
  work: (asked: Asked, io: CommandIo) => Promise<void>;
}

/** A command for backups: reads what was asked, works, and says what went wrong with what to do. */
export function backupCommand({ usage, replaceable = false, failed = 2, work }: BackupCommand): Command {
  return async (args, io) => {
    const asked = understood(args, replaceable);
    if (typeof asked === 'string') {
      io.err(`${asked}\n${usage}`);
      return 2;
    }
    try {
      await work(asked, io);
      return 0;
    } catch (error) {
      io.err(error instanceof SetUpError ? `${error.message}\n${error.advice}` : `The database could not be used: ${explain(error)}`);
      return failed;
    }
  };
}

export const grouped = (count: number): string => count.toLocaleString('en-GB');

/** `1.2 MB, 12,345 rows, of 2026-11-28 02:30 UTC, encrypted`; people are named where a backup knows of them. */
export function reportWords({ bytes, rows, about, encrypted }: BackupReport): string {
  const people = rows['person'] === undefined ? '' : `${grouped(rows['person'])} people, `;
  const taken = about.takenAt.slice(0, 16).replace('T', ' ');
  return `${people}${grouped(rowsIn(rows))} rows, ${bytesText(bytes)}, taken ${taken} UTC by Rungwise ${about.program.version}, ${encrypted ? 'encrypted' : 'not encrypted'}`;
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
