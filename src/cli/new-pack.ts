import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { starterFiles } from './new-pack-files.js';
import type { CommandIo } from './command.js';

const usage = 'Use: rungwise new-pack <folder>';

/**
 * `rungwise new-pack <folder>`: writes a small sound pack into a new or empty folder, to be changed into one's own.
 * Answers 0 when it is written, 2 when the folder holds something or cannot be written.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const [folder, ...more] = args;
  if (folder === undefined || folder.startsWith('-') || folder.includes('\0') || more.length > 0) {
    io.err(`Name one folder for the new pack.\n${usage}`);
    return 2;
  }
  try {
    await mkdir(folder, { recursive: true });
    if ((await readdir(folder)).length > 0) {
      io.err(`The folder ${JSON.stringify(folder)} is not empty. Name one that is empty, or is not there yet.`);
      return 2;
    }
    for (const [name, text] of Object.entries(await starterFiles(idFrom(folder)))) {
      await mkdir(dirname(join(folder, name)), { recursive: true });
      await writeFile(join(folder, name), text, { flag: 'wx' });
    }
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason';
    io.err(`The folder ${JSON.stringify(folder)} cannot be written (${code}). Check that you may write there.`);
    return 2;
  }
  io.out(`A small pack is in ${folder}. Change it file by file; question-packs/README.md says what each line means.
  npx rungwise check ${folder}     says what is wrong, with the place
  npx rungwise add ${folder}       puts it into the bank`);
  return 0;
}

/** An id out of the folder's name, as near as the rules of ids allow. */
function idFrom(folder: string): string {
  const id = basename(resolve(folder))
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+|-+$/g, '')
    .slice(0, 40);
  return id === '' ? 'my-club' : id;
}
