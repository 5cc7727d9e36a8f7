import { describe, expect, it, vi } from 'vitest';
import { readPackFolderApart } from '../../src/packs/read-apart.js';
import { allowSource, childrenRunFromSource } from './source-child.js';
import { folderOf, goodPack, short, tenFaults } from './temporary-pack.js';

describe('readPackFolderApart', () => {
  childrenRunFromSource();

  it('tells what reading in the same process tells', async () => {
    const good = await readPackFolderApart(goodPack);
    expect(good).toEqual({
      findings: [],
      head: { id: 'wobbling-basics', version: '1.2.0' },
      coverage: [{ objective: 'LA-02', questions: 1, families: 1 }],
    });
    expect((await readPackFolderApart(tenFaults)).findings).toHaveLength(10);
  });

  it('ends a reading that takes too long, and says so as a finding', async () => {
    const { findings, head } = await readPackFolderApart(goodPack, { milliseconds: 1 });
    expect([findings.map(short), head]).toEqual([['.:1:1 too-costly'], null]);
  });

  it('survives a reading that runs out of memory', async () => {
    const entry = '  - { id: LA-02-001, a: { b: { c: [1, 2, 3, 4, 5, 6, 7, 8, 9] } } }\n';
    const file = `questions:\n${entry.repeat(4_000)}`;
    const folder = await folderOf(Object.fromEntries(Array.from({ length: 6 }, (_, number) => [`${number}.yaml`, file])));
    const { findings } = await readPackFolderApart(folder, { heap: 12, milliseconds: 30_000 });
    expect(findings.map(short)).toEqual(['.:1:1 too-costly']);
  });

  it('rejects when the child breaks for a reason of its own', async () => {
    vi.stubEnv('NODE_OPTIONS', '');
    try {
      // Without the help that runs TypeScript, the child of a test does not start.
      await expect(readPackFolderApart(goodPack)).rejects.toThrow(/ended with code 1/);
    } finally {
      allowSource();
    }
  });
});
