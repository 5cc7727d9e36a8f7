import { mkdtemp, readFile, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Pack } from '../core/pack.js';
import { archiveLimit, unpack } from './archive.js';
import { readPackFolderApart, type ReadApart } from './read-apart.js';
import { readPackFolder } from './read-folder.js';

/** A pack from outside, looked over; the pack itself only when the check found no error. */
export interface Examined {
  report: ReadApart;
  pack: Pack | null;
}

/** Whoever adds a pack waits for it, and a slow or busy machine must not refuse a good one: longer than `check` may take. */
const patience = { milliseconds: 30_000 };

/** A folder, checked in a process of its own first, so that nothing in it can stop the caller. */
export async function examineFolder(folder: string): Promise<Examined> {
  const report = await readPackFolderApart(folder, patience);
  if (report.findings.some(({ level }) => level === 'error')) return { report, pack: null };
  const { pack } = await readPackFolder(folder, { tryFamilies: false });
  return { report, pack };
}

/** The bytes of a ZIP archive, by way of a folder that is taken away again. */
export async function examineArchive(bytes: Buffer): Promise<Examined> {
  const folder = await mkdtemp(join(tmpdir(), 'rungwise-pack-'));
  try {
    const findings = await unpack(bytes, folder);
    return findings.length > 0 ? { report: { findings, head: null, coverage: [] }, pack: null } : await examineFolder(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** A folder or an archive, by what is there. A file over the limit is not read. */
export async function examinePath(path: string): Promise<Examined> {
  const found = await stat(path).catch(() => null);
  if (found?.isFile() !== true) return await examineFolder(path);
  return await examineArchive(found.size > archiveLimit ? Buffer.alloc(archiveLimit + 1) : await readFile(path));
}
