import { basename } from 'node:path';
import { bytesText } from '../core/words.js';
import type { BackupFolder } from '../platform/backup/kept-folder.js';

/** What the server's process knows of itself and of its disk, and hands to the administrator's pages. */
export interface ServerPlace {
  /** Of the program. */
  version: string;
  /** Letters of this process, as the jobs write them. */
  server: string;
  /** The database came with the program and lies in the data folder. */
  embedded: boolean;
  /** Backups are encrypted. */
  sealed: boolean;
  backups: BackupFolder;
}

/** What is kept of a backup in the list of jobs. */
export const backupNote = ({ file, bytes, rows }: { file: string; bytes: number; rows: number }): string =>
  `${basename(file)}, ${rows} rows, ${bytesText(bytes)}`;
