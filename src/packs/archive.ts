import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { crc32 } from 'node:zlib';
import { fromBuffer, type Entry, type ZipFile } from 'yauzl';
import { nameFault, sameFile } from './archive-names.js';
import { plain, type Finding } from './reading/finding.js';
import { folderLimits } from './yaml/limits.js';

/** Bytes of an archive as it is sent. */
export const archiveLimit = 5_000_000;

/**
 * Unpacks a ZIP archive into an empty folder: only what a pack is read from (YAML and SVG), within the limits of folders, by sizes as
 * they come and not as they are claimed. A single folder around everything is left out.
 * @returns what is wrong with the archive; empty when all is unpacked
 */
export async function unpack(bytes: Buffer, folder: string): Promise<Finding[]> {
  if (bytes.length > archiveLimit)
    return [about('archive-size', `The archive has over ${archiveLimit / 1_000_000} MB. Send the pack without pictures and notes.`)];
  let zip: ZipFile;
  try {
    zip = await open(bytes);
  } catch {
    return [about('archive-unreadable', 'This is no ZIP archive, or it is damaged. Pack the folder again and send that.')];
  }
  try {
    const entries = await list(zip);
    if ('rule' in entries) return [entries];
    return await write(zip, entries, folder);
  } catch (error) {
    // The package's own words: of names that leave the folder, of sizes that are not as claimed.
    const words = error instanceof Error ? error.message : '';
    return [about('archive-unreadable', `The archive cannot be unpacked (${plain(words)}). Pack the folder again and send that.`)];
  } finally {
    zip.close();
  }
}

const open = (bytes: Buffer): Promise<ZipFile> =>
  new Promise((resolve, reject) => {
    fromBuffer(bytes, { lazyEntries: true, autoClose: false, validateEntrySizes: true }, (error, zip) =>
      error ? reject(error) : resolve(zip),
    );
  });

function list(zip: ZipFile): Promise<Entry[] | Finding> {
  if (zip.entryCount > folderLimits.entries)
    return Promise.resolve(
      about('archive-entries', `The archive holds over ${folderLimits.entries} files and folders. Is it the pack's own folder?`),
    );
  return new Promise((resolve, reject) => {
    const entries: Entry[] = [];
    zip.on('error', reject);
    zip.on('end', () => resolve(entries));
    zip.on('entry', (entry: Entry) => {
      entries.push(entry);
      zip.readEntry();
    });
    zip.readEntry();
  });
}

async function write(zip: ZipFile, entries: readonly Entry[], folder: string): Promise<Finding[]> {
  const files = entries.filter(
    (entry) =>
      /\.(?:ya?ml|svg)$/i.test(entry.fileName) && !entry.fileName.split('/').some((part) => part.startsWith('.') || part === '__MACOSX'),
  );
  if (files.length === 0)
    return [about('archive-empty', 'The archive holds no YAML file. Pack the folder that holds pack.yaml, and send that.')];
  const outer = outerFolder(files);
  const seen = new Set<string>();
  const findings: Finding[] = [];
  let together = 0;
  for (const entry of files) {
    const name = entry.fileName.slice(outer.length);
    const wrong = refusal(entry) ?? nameFault(name) ?? (seen.has(sameFile(name)) ? twice : null);
    seen.add(sameFile(name));
    together += entry.uncompressedSize;
    if (wrong !== null) findings.push(about('archive-entry', wrong, name));
    else if (together > folderLimits.bytesTogether)
      return [about('folder-size', 'The files hold over 20 MB together. Split the pack.', name)];
    else if (!(await writeOne(zip, entry, join(folder, name)))) findings.push(about('archive-entry', damaged, name));
  }
  return findings;
}

const twice = 'Another file has this name but for capitals or the way its letters are put together. Rename one of the two.';
const damaged = 'This file is damaged: it is not what was packed. Pack the folder again and send that.';

/** Links and devices carry their kind in the upper half of the attributes, as Unix has it; 0 is an archive made elsewhere. */
function refusal(entry: Entry): string | null {
  const kind = (entry.externalFileAttributes >>> 16) & 0o170000;
  if (kind !== 0 && kind !== 0o100000) return 'This is a link to another place. Put the file itself here.';
  if ((entry.generalPurposeBitFlag & 1) !== 0) return 'This file is encrypted. Pack the folder without a password.';
  if (entry.uncompressedSize > folderLimits.bytesPerFile) return 'The file holds more than 2 MB. Split it into several files.';
  return null;
}

/** @returns false for a file whose check sum does not agree; the reader of archives looks at sizes only */
async function writeOne(zip: ZipFile, entry: Entry, path: string): Promise<boolean> {
  await mkdir(dirname(path), { recursive: true });
  const from = await new Promise<NodeJS.ReadableStream>((resolve, reject) => {
    zip.openReadStream(entry, (error, stream) => (error ? reject(error) : resolve(stream)));
  });
  const content = await buffer(from);
  if (crc32(content) !== entry.crc32 >>> 0) return false;
  await writeFile(path, content, { flag: 'wx' });
  return true;
}

/** The folder in which everything lies, with its slash; empty when pack.yaml lies outside any. */
function outerFolder(files: readonly Entry[]): string {
  const first = files[0]?.fileName.split('/', 1)[0] ?? '';
  return files.length > 0 && files.every(({ fileName }) => fileName.startsWith(`${first}/`)) ? `${first}/` : '';
}

const about = (rule: string, message: string, file = '.'): Finding => ({
  level: 'error',
  rule,
  file: plain(file),
  line: 1,
  column: 1,
  path: '',
  message,
});
