import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readPackFolder } from '../src/packs/read-folder.js';
import { projectFolder } from '../src/platform/project-folder.js';

const folder = join(projectFolder, 'question-packs');
const packs = (await readdir(folder, { withFileTypes: true })).filter((entry) => entry.isDirectory()).map(({ name }) => name);

describe('the packs that ship', () => {
  it('are there', () => {
    expect(packs.length).toBeGreaterThan(0);
  });

  it.each(packs)('include %s, in which there is nothing to mend', async (name) => {
    const { pack, findings } = await readPackFolder(join(folder, name));
    expect(findings.map(({ file, line, column, level, message }) => `${file}:${line}:${column} ${level} ${message}`)).toEqual([]);
    expect(pack?.head.id).toBe(name);
  });
});
