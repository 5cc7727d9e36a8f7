import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli/check.js';
import { childrenRunFromSource } from '../packs/source-child.js';
import { folderOf, goodPack, goodPackWith, tenFaults } from '../packs/temporary-pack.js';

interface Document {
  pack: { id: string | null; version: string | null };
  errors: Record<string, unknown>[];
  warnings: Record<string, unknown>[];
  coverage: { objective: string; questions: number; families: number }[];
}

async function check(...args: string[]): Promise<{ status: number; out: string[]; err: string[] }> {
  const out: string[] = [];
  const err: string[] = [];
  const status = await run(args, { out: (text) => void out.push(text), err: (text) => void err.push(text) });
  return { status, out, err };
}

/** With --json there must be exactly one document. */
async function checkJson(...args: string[]): Promise<{ status: number; document: Document; err: string[] }> {
  const { status, out, err } = await check(...args, '--json');
  expect(out).toHaveLength(1);
  return { status, document: JSON.parse(out[0] ?? '') as Document, err };
}

describe('rungwise check', () => {
  childrenRunFromSource();

  it('answers 0 for a good pack, with its name and coverage', async () => {
    const { status, document, err } = await checkJson(goodPack);
    expect([status, err]).toEqual([0, []]);
    expect(document).toEqual({
      pack: { id: 'wobbling-basics', version: '1.2.0' },
      errors: [],
      warnings: [],
      coverage: [{ objective: 'LA-02', questions: 1, families: 1 }],
    });
  });

  it('answers 1 for a pack with errors, each with rule, file, line, column, path and message', async () => {
    const { status, document } = await checkJson(tenFaults);
    expect(status).toBe(1);
    expect(document.pack).toEqual({ id: 'wobbling-basics', version: '1.2.0' });
    expect(document.errors).toHaveLength(10);
    expect(document.errors[0]).toEqual({
      rule: 'wrong-value',
      file: 'questions.yaml',
      line: 6,
      column: 13,
      path: 'questions[0].demand',
      message: expect.stringContaining('"applied"') as string,
    });
  });

  it('answers 0 when there are only warnings, and lists them apart', async () => {
    const folder = await goodPackWith({ 't.yaml': 'topics:\n  - { code: LB, title: Other, blurb: None. }\n' });
    const { status, document } = await checkJson(folder);
    expect([status, document.errors.length, document.warnings.map(({ rule }) => rule)]).toEqual([0, 0, ['topic-empty']]);
  });

  it('writes for people by file, line and column, with a summary and the coverage', async () => {
    const { status, out, err } = await check(tenFaults);
    const lines = out.join('\n').split('\n');
    expect([status, err, lines[0]]).toEqual([1, [], 'questions.yaml']);
    expect(lines[1]).toMatch(/^ {2}questions\.yaml:6:13 {2}"applied" is not one of .* \(wrong-value\)$/);
    expect(lines.at(-2)).toBe('wobbling-basics 1.2.0: 10 errors, no warnings. It cannot be loaded until the errors are mended.');
    expect(lines.at(-1)).toBe('Coverage: 1 objective, 1 question, families for 0.');
  });

  it('names the objectives that nothing asks about', async () => {
    const { out } = await check(await goodPackWith({ 'questions/la.yaml': 'questions: []\n', 'families.yaml': 'families: []\n' }));
    expect(out.join('\n')).toMatch(/Coverage: 1 objective, no questions, families for 0; nothing asks about LA-02\.$/);
  });

  it.each([
    ['no folder is named', [], 'Name the folder'],
    ['two folders are named', [goodPack, tenFaults], 'One folder'],
    ['an option is mistyped', [goodPack, '--jsn'], "Unknown option '--jsn'"],
    ['the folder is not there', [join(goodPack, 'nowhere')], 'no such folder'],
    ['a file is named', [join(goodPack, 'pack.yaml')], 'a file, not a folder'],
    ['the name holds a NUL', ['a\0b'], 'U+0000'],
  ])('answers 2 when %s, on standard error and in the document', async (_what, args, words) => {
    const plain = await check(...args);
    expect([plain.status, plain.out]).toEqual([2, []]);
    expect(plain.err.join('\n')).toContain(words);
    const { status, document } = await checkJson(...args);
    expect([status, document.pack, document.errors.length]).toEqual([2, { id: null, version: null }, 1]);
  });

  it.each([
    ['brackets that would end the process', { 'x.yaml': '['.repeat(20_000) }],
    ['100,000 keys', { 'x.yaml': Array.from({ length: 100_000 }, (_, number) => `k${number}: 1\n`).join('') }],
    ['bytes that are no text', { 'x.yaml': Uint8Array.from({ length: 5_000 }, (_, number) => (number * 7_919) % 256) }],
    ['names that a terminal would act on', { '\u001b[2J.yaml': 'a: 1\n' }],
  ])('answers 1 for a folder with %s, and shows no stack trace', async (_what, files) => {
    const { status, out, err } = await check(await folderOf(files));
    expect([status, err]).toEqual([1, []]);
    expect(out.join('\n')).not.toMatch(/\n\s+at |node_modules|\u001b/);
  });

  it('ends within 10 seconds and says so when a pack takes too long to read', async () => {
    const entry = `  - id: LA-02-001\n    options:\n${'      - { text: a, why: b, c: [1, 2, 3, 4, 5, 6] }\n'.repeat(12)}`;
    const files = Object.fromEntries(Array.from({ length: 10 }, (_, number) => [`${number}.yaml`, `questions:\n${entry.repeat(390)}`]));
    const start = performance.now();
    const { status, document } = await checkJson(await folderOf(files));
    expect(performance.now() - start).toBeLessThan(10_000);
    expect([status, document.errors.length > 0]).toEqual([1, true]);
  });
});
