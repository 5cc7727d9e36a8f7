import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { projectFolder } from '../platform/project-folder.js';

/** A block of the documentation that begins with a comment with the name of its file. */
const block = /```(?:yaml\n# ([\w/-]+\.yaml)|svg\n<!-- ([\w-]+\.svg) -->)\n([\s\S]*?)```/g;

/** The complete example of question-packs/README.md, file by file, under an id of its own: what is documented is what one starts with. */
export async function starterFiles(id: string): Promise<Record<string, string>> {
  const text = await readFile(join(projectFolder, 'question-packs', 'README.md'), 'utf8');
  const files = [...text.matchAll(block)].map(([, yaml, svg, content = '']): [string, string] => [yaml ?? svg ?? '', content]);
  return Object.fromEntries(
    files.map(([name, content]) => [name, name === 'pack.yaml' ? content.replace(/^ {2}id: .*$/m, `  id: ${id}`) : content]),
  );
}
