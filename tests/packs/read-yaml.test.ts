import { describe, expect, it } from 'vitest';
import { readYaml, type YamlFile } from '../../src/packs/read-yaml.js';

const read = (text: string): YamlFile => readYaml(new TextEncoder().encode(text));
/** Rule and place of every fault. Lines and columns below are counted by hand, from 1. */
const faults = (text: string): string[] => read(text).faults.map(({ rule, line, column }) => `${line}:${column} ${rule}`);

describe('readYaml', () => {
  it('takes plain words for words and only numbers for numbers', () => {
    // YAML 1.2.2, section 10.3.2 (core schema): no, yes, 12:30 and days are texts; 012 is twelve, 1e3 a thousand, ~ nothing.
    const { value, faults: found } = read('a: no\nb: 012\nc: 12:30\nd: 1e3\ne: 2026-11-25\nf: yes\ng: ~\nh: true\ni: 1.2.0\nj: off\n');
    expect(found).toEqual([]);
    expect(value).toEqual({ a: 'no', b: 12, c: '12:30', d: 1000, e: '2026-11-25', f: 'yes', g: null, h: true, i: '1.2.0', j: 'off' });
  });

  it('keeps how a value is written, so that a message can show it', () => {
    const file = read('a: 012\nb: [x, "y"]\n');
    expect([file.written(['a']), file.written(['b', 1]), file.written(['b']), file.written(['c'])]).toEqual(['012', 'y', null, null]);
  });

  it('takes a byte order mark and either kind of line end, and counts lines the same', () => {
    const file = read('\ufeffa: 1\r\nb:\r\n  c: 2\r\n');
    expect(file.value).toEqual({ a: 1, b: { c: 2 } });
    expect(file.placeOf(['b', 'c'])).toEqual({ line: 3, column: 6 });
    expect(file.placeOfKey(['b', 'c'])).toEqual({ line: 3, column: 3 });
  });

  it('gives the place of a key when nothing stands behind it, and of the nearest thing above when there is no such key', () => {
    const file = read('a:\n  b:\n  c: [1, 2]\n');
    expect(file.placeOf(['a', 'b'])).toEqual({ line: 2, column: 3 });
    expect(file.placeOf(['a', 'c', 1])).toEqual({ line: 3, column: 10 });
    expect(file.placeOf(['a', 'c', 7])).toEqual({ line: 3, column: 6 });
    expect(file.placeOf(['a', 'x', 'y'])).toEqual({ line: 2, column: 3 });
  });

  it.each([
    ['an anchor', 'a: &x 1\n', ['1:4 yaml-anchor']],
    ['an alias', 'a: 1\nb: *a\n', ['2:4 yaml-alias']],
    ['a tag', 'a: 1\nb: !!js/function "x"\n', ['2:4 yaml-tag']],
    ['a directive', '%YAML 1.1\n---\na: no\n', ['1:1 yaml-directive']],
    ['a merge key', 'a:\n  <<: { b: 1 }\n', ['2:3 yaml-merge-key']],
    ['a key written twice', 'a: 1\nb: 2\na: 3\n', ['3:1 duplicate-key']],
    ['a key written twice in a list entry', '- a: 1\n  a: 2\n', ['2:3 duplicate-key']],
    ['a second document', 'a: 1\n---\nb: 1\n', ['2:1 yaml-documents']],
    ['a second document after an end mark', 'a: 1\n...\nb: 1\n', ['3:1 yaml-documents']],
    [
      'keys that reach behind the data',
      'a:\n  __proto__: { x: 1 }\n  constructor: 1\nprototype: 2\n',
      ['2:3 forbidden-key', '3:3 forbidden-key', '4:1 forbidden-key'],
    ],
    ['a NUL', 'a: x\0y\n', ['1:5 text-character']],
    ['a control character', 'a: 1\nb: x\u0007\n', ['2:5 text-character']],
    ['a change of writing direction', 'a: \u202ex\n', ['1:4 text-character']],
    ['a byte order mark in mid-text', 'a: x\ufeff\n', ['1:5 text-character']],
    ['a lost character', 'a: x\ufffd\n', ['1:5 text-character']],
    ['a carriage return alone', 'a: 1\rb: 2\n', ['1:5 text-character']],
    ['half a character in an escape', 'a: "\\ud800"\n', ['1:4 text-character']],
    ['a NUL in an escape', 'a: 1\nb: "x\\0"\n', ['2:4 text-character']],
    ['a direction change in an escape', '- "\\u202e"\n', ['1:3 text-character']],
    ['a tab as indentation', 'a:\n\tb: 1\n', ['2:1 yaml-syntax']],
    ['a second colon', 'a: Fuses: what they do\n', ['1:4 yaml-syntax']],
    ['a quote mark in the middle', 'a:\n  b: "Fuse" is a word\n', ['2:13 yaml-syntax']],
    ['a brace at the start of a text', 'a: {P} W\n', ['1:8 yaml-syntax']],
    ['an unknown escape', 'a: "C:\\dir"\n', ['1:7 yaml-syntax']],
    ['an unclosed bracket', 'a:\n  b: [x, y\n  c: 1\n', ['3:3 yaml-syntax']],
    ['an entry indented too little', 'a:\n  - b: 1\n   c: 2\n', ['3:1 yaml-syntax']],
    ['a sign that cannot begin a text', 'a: @home\n', ['1:4 yaml-syntax']],
    ['a text cut short by a hash', 'a: Use fuse #3 here\n', ['1:4 text-cut-short']],
  ])('tells of %s at its line and column', (_what, text, expected) => {
    expect(faults(text)).toEqual(expected);
  });

  it('says nothing of a comment after a space', () => {
    expect(faults('a: Use a fuse # the small one\nb: "x #3"\n')).toEqual([]);
  });

  it('keeps the first of two equal keys', () => {
    expect(read('a: 1\na: 2\n').value).toEqual({ a: 1 });
  });

  it('leaves Object.prototype alone', () => {
    const { value } = read('a:\n  __proto__: { polluted: yes }\n');
    expect(value).toEqual({ a: {} });
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });

  it.each([
    ['two bytes of UTF-16', [0xff, 0xfe, 0x61, 0x00], '1:1', 'UTF-16'],
    ['a pound sign of Latin-1', [0x61, 0x3a, 0x0a, 0x62, 0xa3, 0x0a], '2:2', 'a3'],
    ['half a character at the end', [0x61, 0xe2, 0x82], '1:2', 'e2'],
    ['an overlong slash', [0xc0, 0xaf], '1:1', 'c0'],
    ['a surrogate in UTF-8', [0x61, 0x62, 0xed, 0xa0, 0x80], '1:3', 'ed'],
    ['a bad byte after good ones beyond ASCII', [0xc3, 0xa9, 0xe2, 0x41], '1:2', 'e2'],
  ])('refuses %s with its place', (_what, bytes, place, named) => {
    const { readable, faults: found } = readYaml(Uint8Array.from(bytes));
    expect([readable, found.length, found[0]?.rule, `${found[0]?.line}:${found[0]?.column}`]).toEqual([false, 1, 'text-encoding', place]);
    expect(found[0]?.message).toContain(named);
  });

  it('takes 20 levels and refuses 21', () => {
    const nested = (depth: number): string => `${'['.repeat(depth)}x${']'.repeat(depth)}\n`;
    expect(faults(nested(20))).toEqual([]);
    expect(faults(nested(21))).toEqual(['1:21 yaml-depth']);
    const mappings = (depth: number): string =>
      Array.from({ length: depth }, (_, level) => `${' '.repeat(level)}a:${level === depth - 1 ? ' x' : ''}\n`).join('');
    expect(faults(mappings(20))).toEqual([]);
    expect(faults(mappings(21))).toEqual(['21:21 yaml-depth']);
  });

  it('takes 200 keys in a mapping, 5,000 entries in a list and 10,000 letters in a text, and no more', () => {
    const keys = (count: number): string => Array.from({ length: count }, (_, number) => `k${number}: 1\n`).join('');
    const texts = (letters: number): string => `a: ${'x'.repeat(letters)}\n`;
    expect([keys(200), '- a\n'.repeat(5_000), texts(10_000)].map(faults)).toEqual([[], [], []]);
    expect(faults(keys(201))).toEqual(['201:1 yaml-size']);
    expect(faults('- a\n'.repeat(5_001))).toEqual(['5001:3 yaml-size']);
    expect(faults(texts(10_001))).toEqual(['1:4 yaml-size']);
  });

  it('tells twenty faults of one kind at most, and goes on with the rest of the file', () => {
    const file = read(`${Array.from({ length: 40 }, (_, number) => `a${number}: x\u0007\n`).join('')}last: 1\n`);
    expect(file.faults).toHaveLength(20);
    expect(file.value).toMatchObject({ last: 1 });
  });

  it('says how to mend what beginners write most', () => {
    const advice = (text: string): string | undefined => read(text).faults[0]?.message;
    expect(advice('a: Fuses: what\n')).toContain('quote marks');
    expect(advice('a:\n\tb: 1\n')).toContain('Use spaces');
    expect(advice('a: "x\n')).toContain('never closed');
    expect(advice('a: > 5 mA\n')).toContain('quote');
    expect(advice('a: - b\n')).toContain('begins on the line below');
    expect(advice('a: *bold*\n')).toContain('quote marks');
  });

  it('shares one budget of parts among the files of a pack', () => {
    const budget = { pieces: 10 };
    const text = new TextEncoder().encode('a: 1\n');
    expect(readYaml(text, budget).faults).toEqual([]);
    expect(readYaml(text, budget).faults.map(({ rule }) => rule)).toEqual(['pack-size']);
  });

  it('takes a comma between digits for a slip, and one with a space after it for what it is', () => {
    expect(faults('a: [0,4, 1,5]\n')).toEqual(['1:7 yaml-comma', '1:12 yaml-comma']);
    expect(faults('a: { b: 0,02 }\n')).toEqual(expect.arrayContaining([expect.stringContaining('yaml-comma')]));
    expect(faults('a: [0, 4, 10]\nb: 0,4\nc: {d: 1, e: 2}\n')).toEqual([]);
  });
});
