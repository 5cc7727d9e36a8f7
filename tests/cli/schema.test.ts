import { Ajv2020 } from 'ajv/dist/2020.js';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { run } from '../../src/cli/schema.js';
import { packFileSchemas, type PackFileKind } from '../../src/core/pack.js';
import { projectFolder } from '../../src/platform/project-folder.js';
import { sampleOf } from '../support/kind-samples.js';

/** The published JSON Schema, held by a reader of JSON Schema 2020-12 that is not ours (Ajv) against packs and against the check's own schemas. */

const home = join(projectFolder, 'question-packs');
let validate: (value: unknown) => boolean;
let published: string;
beforeAll(async () => {
  published = await readFile(join(home, 'pack-file.schema.json'), 'utf8');
  // Strict about its own words, but a key may be required where another schema describes it.
  validate = new Ajv2020({ strict: true, strictRequired: false, strictTypes: false, validateFormats: false }).compile(
    JSON.parse(published) as object,
  );
});

async function yamlFiles(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries.filter((entry) => entry.isFile() && entry.name.endsWith('.yaml')).map((entry) => join(entry.parentPath, entry.name));
}

describe('the JSON Schema of a pack’s files', () => {
  it('that is published is what the command prints', async () => {
    const out: string[] = [];
    expect(await run([], { out: (text) => void out.push(text), err: () => undefined })).toBe(0);
    expect(out.join('\n').trim()).toBe(published.trim());
  });

  it('takes every file of the packs that are shipped', async () => {
    const files = await yamlFiles(home);
    expect(files.length).toBeGreaterThan(80);
    const refused: string[] = [];
    for (const file of files) if (!validate(parse(await readFile(file, 'utf8')))) refused.push(file.slice(home.length));
    expect(refused).toEqual([]);
  });

  const questions = (['single', 'several', 'order', 'pairs', 'place'] as const).map(sampleOf);
  it.each(questions.map((question) => [question.kind, question] as const))('takes a question of the kind %s', (_, question) => {
    expect(validate({ questions: [question] })).toBe(true);
  });

  type Loose = Record<string, unknown> & { [list: string]: Record<string, unknown>[] };
  const first = (kind: string): Loose => structuredClone(questions.find((question) => question.kind === kind)) as unknown as Loose;
  const broken: [string, () => Loose][] = [
    ['a key that is not known', () => ({ ...first('single'), colour: 'red' }) as unknown as Loose],
    ['no stem', () => ({ ...first('single'), stem: undefined }) as unknown as Loose],
    ['an empty stem', () => ({ ...first('single'), stem: '' }) as unknown as Loose],
    ['a kind that is not known', () => ({ ...first('single'), kind: 'riddle' }) as unknown as Loose],
    ['a demand that is not known', () => ({ ...first('single'), demand: 'aply' }) as unknown as Loose],
    ['an id of another form', () => ({ ...first('single'), id: 'LA-2-1' }) as unknown as Loose],
    ['two keys', () => changed(first('single'), 'options', 1, { key: true })],
    ['no key', () => changed(first('single'), 'options', 0, { key: undefined, why: 'So.' })],
    ['a wrong option without why', () => changed(first('single'), 'options', 1, { why: undefined })],
    ['a false statement without why', () => changed(first('several'), 'statements', 1, { why: undefined })],
    [
      'statements that are all false',
      () =>
        ({
          ...first('several'),
          statements: (first('several')['statements'] ?? []).map((each) => ({ ...each, holds: false, why: 'So.' })),
        }) as unknown as Loose,
    ],
    ['two places that are the key', () => changed(first('place'), 'places', 0, { key: true })],
    ['a step without why', () => changed(first('order'), 'steps', 1, { why: undefined })],
    ['two pairs only', () => ({ ...first('pairs'), pairs: (first('pairs')['pairs'] ?? []).slice(0, 2) }) as unknown as Loose],
    ['a revision of 0', () => ({ ...first('single'), revision: 0 }) as unknown as Loose],
  ];
  it.each(broken)('refuses, as the check does, %s', (_, make) => {
    const question: unknown = JSON.parse(JSON.stringify(make()));
    expect(packFileSchemas.questions.safeParse([question]).success).toBe(false);
    expect(validate({ questions: [question] })).toBe(false);
  });

  it.each(Object.keys(packFileSchemas) as PackFileKind[])('knows what stands under %s', (kind) => {
    expect(validate({ [kind]: 7 })).toBe(false);
  });

  it('refuses a file with no key, two keys or a strange one', () => {
    for (const file of [{}, { topics: [], cautions: [] }, { cards: [] }, [], null, 'topics']) expect(validate(file)).toBe(false);
  });
});

function changed<T extends Record<string, unknown>>(question: T, list: string, at: number, change: object): T {
  const entries = question[list] as object[];
  return { ...question, [list]: entries.map((entry, index) => (index === at ? { ...entry, ...change } : entry)) };
}
