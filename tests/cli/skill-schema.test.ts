import { Ajv2020 } from 'ajv/dist/2020.js';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { projectFolder } from '../../src/platform/project-folder.js';
import { smallSkills } from '../support/small-skills.js';

/** The published JSON Schema of a pack's files, read by Ajv, on practical skills. */

const published = JSON.parse(await readFile(join(projectFolder, 'question-packs', 'pack-file.schema.json'), 'utf8')) as object;
const validate = new Ajv2020({ strict: true, strictRequired: false, strictTypes: false, validateFormats: false }).compile(published);
const [lead] = smallSkills;

it('the JSON Schema takes skills', () => {
  expect(validate({ skills: smallSkills })).toBe(true);
});

it.each<[string, object]>([
  ['a key that is not known', { colour: 'red' }],
  ['two criteria only', { criteria: lead?.criteria.slice(0, 2) }],
  ['a criterion without why', { criteria: lead?.criteria.map(({ text }) => ({ text })) }],
  ['no caution', { caution: undefined }],
  ['a region that is not known', { regions: ['mars'] }],
  ['no minutes', { minutes: 0 }],
])('the JSON Schema refuses a skill with %s', (_what, change) => {
  const skill: unknown = JSON.parse(JSON.stringify({ ...lead, ...change }));
  expect(validate({ skills: [skill] })).toBe(false);
});
