import { afterAll, beforeAll, vi } from 'vitest';
import { readPackFolderApart } from '../../src/packs/read-apart.js';
import { goodPack } from './temporary-pack.js';

/** For test files whose subject starts a child process: lets the child run from source, and has everything translated beforehand. */
export function childrenRunFromSource(): void {
  beforeAll(async () => {
    allowSource();
    await readPackFolderApart(goodPack, { milliseconds: 60_000 });
  });
  afterAll(() => vi.unstubAllEnvs());
}

export function allowSource(): void {
  vi.stubEnv('NODE_OPTIONS', `--import=${new URL('./from-source.mjs', import.meta.url).href}`);
}
