import { open, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { codeOf } from '../set-up-error.js';
import { removedName } from '../../core/backup-rotation.js';
import { makeFolder, syncFolder } from './new-file.js';

/**
 * `removed-people.txt` beside the backups: a line for each removed person, a random mark and a day and nothing else. A restore of
 * an older backup reads it and removes them again.
 */

export interface RemovedLine {
  mark: string;
  /** YYYY-MM-DD */
  day: string;
}

const removedFile = (folder: string): string => join(folder, removedName);

const line = /^([0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}) (\d{4}-\d\d-\d\d)$/;

/** The list in a folder of backups. */
export function removedList(folder: string) {
  return {
    read: () => readRemoved(folder),
    marks: async (): Promise<ReadonlySet<string>> => new Set((await readRemoved(folder)).map(({ mark }) => mark)),
    add: (mark: string, day: string) => addRemoved(folder, mark, day),
  };
}

/** Adds a line and forces it to the disk. @throws what the disk says; then it has to be added another time */
async function addRemoved(folder: string, mark: string, day: string): Promise<void> {
  await makeFolder(folder);
  const handle = await open(removedFile(folder), 'a+', 0o600);
  try {
    const { size } = await handle.stat();
    const last = Buffer.alloc(1);
    if (size > 0) await handle.read(last, 0, 1, size - 1);
    // A power cut may have left half a line: it stays by itself.
    await handle.appendFile(`${size > 0 && last[0] !== 10 ? '\n' : ''}${mark} ${day}\n`);
    await handle.sync();
  } finally {
    await handle.close();
  }
  await syncFolder(folder);
}

/** All that can be read; a line that was cut short is passed over. No file: nobody. */
async function readRemoved(folder: string): Promise<RemovedLine[]> {
  const text = await readFile(removedFile(folder), 'utf8').catch((error: unknown) => {
    if (codeOf(error) === 'ENOENT' || codeOf(error) === 'ENOTDIR') return '';
    throw error;
  });
  return text.split('\n').flatMap((each) => {
    const [, mark, day] = line.exec(each.trim()) ?? [];
    return mark === undefined || day === undefined ? [] : [{ mark, day }];
  });
}
