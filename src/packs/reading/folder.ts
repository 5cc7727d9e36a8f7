import { constants } from 'node:fs';
import { lstat, open, opendir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { folderLimits } from '../yaml/limits.js';
import { compare, plain, type Finding } from './finding.js';

export interface FolderFile {
  /** Relative to the pack's folder, with `/` between the parts. */
  name: string;
  bytes: Uint8Array;
}

/** `readable` is false when the folder itself cannot be used: then the one finding says why. */
export interface FolderContent {
  readable: boolean;
  files: FolderFile[];
  findings: Finding[];
}

/**
 * Reads the YAML files and drawings of a folder, three folders deep, in the order of their names. Numbers, sizes and kinds of file are looked
 * at before anything is read; links and devices are refused, names that begin with a point passed over, other files not read.
 */
export async function readFolder(folder: string): Promise<FolderContent> {
  const why = await unusable(folder);
  if (why !== null) return { readable: false, files: [], findings: [about('.', 'no-folder', why)] };
  const listing: Listing = { names: [], findings: [], entries: 0 };
  await list(folder, '', listing);
  if (listing.entries > folderLimits.entries) return { readable: true, files: [], findings: [tooMany] };
  const files: FolderFile[] = [];
  let together = 0;
  for (const name of listing.names.sort(compare)) {
    const bytes = await readFile(join(folder, name), name, listing.findings);
    if (bytes === null) continue;
    together += bytes.length;
    if (together > folderLimits.bytesTogether) {
      listing.findings.push(
        about(name, 'folder-size', `The files hold over ${inMegabytes(folderLimits.bytesTogether)} together. Split the pack.`),
      );
      break;
    }
    files.push({ name, bytes });
  }
  return { readable: true, files, findings: listing.findings };
}

interface Listing {
  names: string[];
  findings: Finding[];
  entries: number;
}

const tooMany = about(
  '.',
  'folder-entries',
  `There are over ${folderLimits.entries} files and folders in here. Is this the pack's own folder? Split the pack if it is.`,
);

async function unusable(folder: string): Promise<string | null> {
  try {
    if ((await stat(folder)).isDirectory()) return null;
    return 'This is a file, not a folder. Name the folder that holds pack.yaml.';
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ENOENT' || code === 'ENOTDIR') return 'There is no such folder. Check the spelling and where you are.';
    return `The folder cannot be opened (${code}). Check that you may read it.`;
  }
}

async function list(folder: string, inside: string, listing: Listing): Promise<void> {
  const folders: string[] = [];
  try {
    for await (const entry of await opendir(join(folder, inside))) {
      if (entry.name.startsWith('.')) continue;
      listing.entries += 1;
      if (listing.entries > folderLimits.entries) return;
      const name = inside === '' ? entry.name : `${inside}/${entry.name}`;
      const kind = await kindOf(join(folder, name));
      if (kind === 'folder') folders.push(name);
      else if (kind !== 'file') listing.findings.push(about(name, kind === 'link' ? 'folder-link' : 'folder-special-file', refusals[kind]));
      else if (/\.(?:ya?ml|svg)$/i.test(name)) listing.names.push(name);
    }
  } catch (error) {
    listing.findings.push(
      about(inside || '.', 'unreadable-file', `The folder cannot be read (${codeOf(error)}). Check that you may read it.`),
    );
  }
  for (const name of folders) {
    if (name.split('/').length > folderLimits.depth) listing.findings.push(about(name, 'folder-depth', refusals.depth));
    else await list(folder, name, listing);
  }
}

const refusals = {
  link: 'This is a link to another place. Put the file itself here.',
  other: 'This is neither a file nor a folder. Take it out.',
  depth: `Folders may stand inside one another ${folderLimits.depth} deep; this one is deeper and was not read. Move its files up.`,
};

async function kindOf(path: string): Promise<'file' | 'folder' | 'link' | 'other'> {
  const info = await lstat(path);
  if (info.isSymbolicLink()) return 'link';
  if (info.isDirectory()) return 'folder';
  return info.isFile() ? 'file' : 'other';
}

/** Reads one byte more than is allowed at most, whatever size the file claims, and follows no link put there meanwhile. */
async function readFile(path: string, name: string, findings: Finding[]): Promise<Uint8Array | null> {
  const limit = folderLimits.bytesPerFile;
  try {
    const file = await open(path, constants.O_RDONLY | constants.O_NOFOLLOW | constants.O_NONBLOCK);
    try {
      const { size } = await file.stat();
      const buffer = new Uint8Array(Math.min(size, limit) + 1);
      let filled = 0;
      while (filled < buffer.length) {
        const { bytesRead } = await file.read(buffer, filled, buffer.length - filled);
        if (bytesRead === 0) break;
        filled += bytesRead;
      }
      if (Math.max(size, filled) <= limit) return buffer.subarray(0, filled);
      findings.push(about(name, 'file-size', `The file holds more than ${inMegabytes(limit)}. Split it into several files.`));
    } finally {
      await file.close();
    }
  } catch (error) {
    findings.push(about(name, 'unreadable-file', `The file cannot be read (${codeOf(error)}). Check that you may read it.`));
  }
  return null;
}

function about(name: string, rule: string, message: string): Finding {
  return { level: 'error', rule, file: plain(name), line: 1, column: 1, path: '', message };
}

function inMegabytes(bytes: number): string {
  return `${bytes / 1_000_000} MB`;
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason';
}
