import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPackFolder } from '../../src/packs/read-folder.js';
import { readYaml } from '../../src/packs/read-yaml.js';
import { folderOf, goodPack, short } from './temporary-pack.js';

/** A pack of strangers must never stop the program: everything here runs in this very process, which would end with it. */

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const repeated = (count: number, line: (number: number) => string): string =>
  Array.from({ length: count }, (_, number) => line(number)).join('');

/** Name, text, and the rule that must refuse it. */
const hostile: [string, string, string][] = [
  ['a thousand brackets', '['.repeat(1_000) + ']'.repeat(1_000), 'yaml-depth'],
  ['twenty thousand brackets', '['.repeat(20_000) + ']'.repeat(20_000), 'yaml-depth'],
  ['twenty thousand braces', '{a: '.repeat(20_000), 'yaml-depth'],
  ['1,200 nested mappings', repeated(1_200, (level) => `${' '.repeat(level)}a:\n`), 'yaml-depth'],
  ['a thousand nested lists on one line', `${'- '.repeat(1_000)}a`, 'yaml-depth'],
  ['a thousand nested keys', `${'? '.repeat(1_000)}a`, 'yaml-depth'],
  ['100,000 keys', repeated(100_000, (number) => `k${number}: 1\n`), 'yaml-size'],
  ['100,000 keys in braces', `{${repeated(100_000, (number) => `k${number}: 1, `)}}`, 'yaml-size'],
  ['100,000 entries', '- a\n'.repeat(100_000), 'yaml-size'],
  ['an alias bomb', `a0: &a0 x\n${repeated(9, (level) => `a${level + 1}: &a${level + 1} [${`*a${level}, `.repeat(9)}]\n`)}`, 'yaml-alias'],
  ['an alias that holds itself', 'a: &a [*a]\n', 'yaml-alias'],
  ['half a million anchors', '&a '.repeat(500_000), 'yaml-anchor'],
  ['half a million aliases', '*a '.repeat(500_000), 'yaml-alias'],
  ['a million tags', '! '.repeat(1_000_000), 'yaml-tag'],
  ['half a million documents', '---\n'.repeat(500_000), 'yaml-documents'],
  ['half a million ends of documents', '...\n'.repeat(500_000), 'yaml-documents'],
  ['a million directives', '%\n'.repeat(1_000_000), 'yaml-directive'],
  ['two million commas', `[${','.repeat(2_000_000)}]`, 'yaml-size'],
  ['a million colons', `{${': '.repeat(1_000_000)}}`, 'yaml-size'],
  ['half a million empty entries', '- \n'.repeat(500_000), 'yaml-size'],
  ['a million pairs of braces', '{}'.repeat(1_000_000), 'yaml-syntax'],
  ['two million quote marks', '"'.repeat(2_000_000), 'yaml-size'],
  ['a million empty comments', '#\n'.repeat(1_000_000), 'yaml-size'],
  ['a text of two million letters', `a: ${'x'.repeat(2_000_000)}`, 'yaml-size'],
  ['a key of two million letters', `${'x'.repeat(2_000_000)}: a`, 'yaml-syntax'],
  ['a million escapes', `a: "${'\\n'.repeat(1_000_000)}"`, 'yaml-size'],
  ['two million carriage returns', '\r'.repeat(2_000_000), 'text-character'],
  ['two million NULs', '\0'.repeat(2_000_000), 'text-character'],
  ['a number that is too large for numbers', `questions:\n  - revision: ${'9'.repeat(400)}\n    kind: single\n`, ''],
];

describe('a hostile file', () => {
  it.each(hostile)('with %s is refused within 2 seconds', (_name, text, rule) => {
    const content = bytes(text);
    const start = process.cpuUsage();
    const { faults } = readYaml(content);
    const { user, system } = process.cpuUsage(start);
    if (rule !== '') expect(faults.map((fault) => fault.rule)).toContain(rule);
    expect((user + system) / 1e6).toBeLessThan(2);
    expect(faults.length).toBeLessThanOrEqual(50);
  });

  it('is refused again and again by the same process', () => {
    // The package by itself ends the process at the second or third of these.
    for (let time = 0; time < 5; time += 1) {
      for (const text of ['['.repeat(1_000) + ']'.repeat(1_000), '['.repeat(20_000)]) expect(readYaml(bytes(text)).readable).toBe(false);
    }
  });

  it('cannot reach the prototype of objects, by whatever key', async () => {
    const keys = ['__proto__', 'constructor', 'prototype', '"__proto__"', '? __proto__\n  '];
    const folder = await folderOf(
      Object.fromEntries(keys.map((key, number) => [`${number}.yaml`, `pack:\n  ${key}: { polluted: yes }\n`])),
    );
    const { findings } = await readPackFolder(folder);
    expect(findings.filter(({ rule }) => rule === 'forbidden-key')).toHaveLength(5);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
    for (const key of ['__proto__', 'constructor', 'toString']) {
      const top = await readPackFolder(await folderOf({ 'x.yaml': `${key}: []\n` }));
      expect(top.findings[0]?.rule).toMatch(/^(forbidden-key|unknown-kind)$/);
    }
  });

  it('cannot name an entry that objects inherit', async () => {
    const { findings } = await readPackFolder(
      await folderOf({ 'q.yaml': 'questions:\n  - objective: constructor\n    caution: toString\n', 'pack.yaml': 'pack: {}' }),
    );
    const missing = findings.filter(({ rule }) => rule === 'missing-reference').map(short);
    expect(missing).toEqual(['q.yaml:2:16 missing-reference questions[0].objective', 'q.yaml:3:14 missing-reference questions[0].caution']);
  });

  it('with a huge number is told that it needs a number', async () => {
    const { findings } = await readPackFolder(
      await folderOf({ 'q.yaml': `questions:\n  - revision: ${'9'.repeat(400)}\n    kind: single\n` }),
    );
    expect(findings.map(short)).toContain('q.yaml:2:15 wrong-type questions[0].revision');
  });
});

describe('whatever bytes a file holds', () => {
  const settings = { seed: 20261125, numRuns: 400 };

  /** Throws when a fault has no place in the file, or a message shows what should not be shown. */
  function sound(content: Uint8Array): void {
    const file = readYaml(content);
    const lines = new TextDecoder().decode(content).split(/\r\n|\r|\n/).length;
    for (const { line, column, rule, message } of file.faults) {
      expect(line).toBeGreaterThanOrEqual(1);
      expect(line).toBeLessThanOrEqual(lines);
      expect(column).toBeGreaterThanOrEqual(1);
      expect(rule).toMatch(/^[a-z0-9-]+$/);
      expect(message.length).toBeGreaterThan(10);
    }
    if (!file.readable) expect(file.faults.length).toBeGreaterThan(0);
  }

  it('they are read or refused with a place, and nothing is thrown', () => {
    const property = fc.property(fc.uint8Array({ maxLength: 400 }), sound);
    expect(() => fc.assert(property, settings)).not.toThrow();
  });

  it('so is text made of the signs that mean something in YAML', () => {
    const sign = fc.constantFrom(
      ...'[]{}:,-?#&*!|>\'"%@`~\\ \n\t\r',
      'a',
      'b: ',
      '- ',
      '\n  ',
      '---\n',
      '...\n',
      'é',
      '𝄞',
      '\ufeff',
      '<<: ',
      'key: ',
      '"\\u0000"',
    );
    const property = fc.property(fc.array(sign, { maxLength: 120 }), (signs) => sound(bytes(signs.join(''))));
    expect(() => fc.assert(property, settings)).not.toThrow();
  });

  it('so is a good pack with any part of it broken', async () => {
    const names = (await readdir(goodPack, { recursive: true })).filter((name) => /ya?ml$/.test(name));
    const files = await Promise.all(
      names.map(async (name): Promise<[string, string]> => [name, await readFile(join(goodPack, name), 'utf8')]),
    );
    const change = fc.record({
      file: fc.nat(files.length - 1),
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      cut: fc.nat(30),
      put: fc.constantFrom(
        '',
        ' ',
        '\n',
        '\t',
        ':',
        '- ',
        '"',
        '[',
        '{',
        '}',
        '#',
        '*x',
        '0',
        'null',
        '[]',
        '{}',
        ': ',
        '\u202e',
        '\ud800',
        'id: LA-02-001\n',
      ),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 3 }), async (changes) => {
        const broken = new Map(files);
        for (const { file, at, cut, put } of changes) {
          const [name] = files[file] as [string, string];
          const text = broken.get(name) ?? '';
          const place = Math.floor(at * text.length);
          broken.set(name, text.slice(0, place) + put + text.slice(place + cut));
        }
        const { pack, findings } = await readPackFolder(await folderOf(Object.fromEntries(broken)));
        expect(pack === null).toBe(findings.some(({ level }) => level === 'error'));
        expect(findings.length).toBeLessThanOrEqual(200);
        for (const finding of findings) expect(JSON.stringify(finding)).not.toMatch(/undefined|\[object/);
      }),
      { seed: 20261125, numRuns: 120 },
    );
  });
});
