import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll } from 'vitest';
import type { Finding } from '../../src/packs/read-folder.js';

/** Folders for tests about packs, taken away when the file's tests are done. */

export const goodPack = fileURLToPath(new URL('../data/packs/good', import.meta.url));
export const tenFaults = fileURLToPath(new URL('../data/packs/ten-faults', import.meta.url));

const made: string[] = [];
afterAll(async () => {
  for (const folder of made) await rm(folder, { recursive: true, force: true });
});

export type Files = Record<string, string | Uint8Array>;

/** A folder with these files and nothing else, written in the order given. */
export async function folderOf(files: Files): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'rungwise-pack-'));
  made.push(folder);
  await add(folder, files);
  return folder;
}

/** A copy of the good pack with some files added or put in place of others. */
export async function goodPackWith(files: Files): Promise<string> {
  const folder = await folderOf({});
  await cp(goodPack, folder, { recursive: true });
  await add(folder, files);
  return folder;
}

async function add(folder: string, files: Files): Promise<void> {
  for (const [name, content] of Object.entries(files)) {
    await mkdir(dirname(join(folder, name)), { recursive: true });
    await writeFile(join(folder, name), content);
  }
}

/** A finding in short: `questions.yaml:6:13 wrong-value questions[0].demand`. */
export function short({ file, line, column, rule, path }: Finding): string {
  return `${file}:${line}:${column} ${rule} ${path}`.trim();
}
