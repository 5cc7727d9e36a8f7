import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../src/cli/check-values.js';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'values-'));
});
afterAll(() => rm(folder, { recursive: true }));

async function said(content: string, ...args: string[]): Promise<{ status: number; out: string; err: string }> {
  const file = join(folder, 'values.json');
  await writeFile(file, content);
  let out = '';
  let err = '';
  const status = await run([file, ...args], { out: (text) => void (out += text), err: (text) => void (err += text) });
  return { status, out, err };
}

const right = {
  id: 'a',
  function: 'ladder base distance',
  inputs: { height_m: 6 },
  expected: { base_m: 1.5 },
  tolerance: { type: 'absolute', value: 0 },
};

describe('the command check-values', () => {
  it('counts what passed, and answers 0, for published values', async () => {
    let out = '';
    const file = fileURLToPath(new URL('../data/safety-values-heights.json', import.meta.url));
    const held = (JSON.parse(await readFile(file, 'utf8')) as unknown[]).length;
    const status = await run([file, '--json'], { out: (text) => void (out += text), err: () => undefined });
    expect([status, JSON.parse(out)]).toEqual([0, { passed: held, failed: [], unknown: [] }]);
  });

  it('tells what failed from what is unknown, and answers 1', async () => {
    const wrong = { ...right, id: 'b', expected: { base_m: 2 } };
    const strange = { ...right, id: 'c', function: 'weight of the moon' };
    const { status, out } = await said(JSON.stringify([right, wrong, strange]), '--json');
    expect([status, JSON.parse(out)]).toEqual([
      1,
      {
        passed: 1,
        failed: [{ id: 'b', function: 'ladder base distance', expected: { base_m: 2 }, got: { base_m: 1.5 } }],
        unknown: [{ id: 'c', function: 'weight of the moon' }],
      },
    ]);
  });

  it('answers 0 when nothing failed, though some are unknown', async () => {
    expect((await said(JSON.stringify([{ ...right, function: 'weight of the moon' }]))).status).toBe(0);
  });

  it.each([
    ['[', /values\.json: /],
    ['{}', /must hold an array/],
    ['[5]', /record 1 must have/],
    ['[{ "id": "a", "function": "f", "inputs": {}, "expected": {}, "tolerance": { "type": "some", "value": 0 } }]', /record 1 must have/],
  ])('answers 2 and says where for a file it cannot use: %s', async (content, message) => {
    const { status, out, err } = await said(content, '--json');
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(message);
  });
});
