import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { goodPack } from '../packs/temporary-pack.js';
import { zip, type ZipEntry } from './zip.js';

/** How many the pack below asks, the family of the good pack among them. */
export const questionsEach = 121;

/** The good pack under another id and with 120 questions, so that writing it takes a while. */
export async function manyQuestions(id: string): Promise<Buffer> {
  const files = (await readdir(goodPack, { recursive: true, withFileTypes: true })).filter((entry) => entry.isFile());
  const entries = files.map(async (entry): Promise<ZipEntry> => {
    const path = join(entry.parentPath, entry.name);
    const text = await readFile(path, 'utf8');
    return { name: path.slice(goodPack.length + 1), content: changed(entry.name, text, id) };
  });
  return zip(await Promise.all(entries));
}

function changed(name: string, text: string, id: string): string {
  if (name === 'pack.yaml') return text.replace('id: wobbling-basics', `id: ${id}`);
  if (name !== 'la.yaml') return text;
  const one = text.replace(/^questions:\n/, '');
  const many = Array.from({ length: questionsEach - 1 }, (_, index) =>
    one.replace('LA-02-001', `LA-02-${String(index + 1).padStart(3, '0')}`).replace('a 4 m ladder', `ladder ${index + 1} of 4 m`),
  );
  return `questions:\n${many.join('')}`;
}
