import { describe, expect, it } from 'vitest';
import { draftOf, textAt, textsAt } from '../../src/core/pack-draft.js';
import { smallPack } from '../support/small-pack.js';

describe('draftOf', () => {
  it('takes every entry of a sound pack both as written and as whole', () => {
    const pack = smallPack();
    const draft = draftOf(pack);
    expect(draft.questions.map(({ whole }) => whole)).toEqual(pack.questions);
    expect(draft.sources).toEqual(pack.sources.map((whole) => ({ raw: whole, whole })));
  });
});

describe('textsAt', () => {
  it('finds the texts at the end of a way, in lists and in mappings, with their paths', () => {
    const family = { constants: { V: { source: 'a' }, W: { value: 1 } }, sources: ['b', 7, 'c'] };
    expect(textsAt(family, ['constants', '*', 'source'])).toEqual([{ path: ['constants', 'V', 'source'], text: 'a' }]);
    expect(textsAt(family, ['sources', '*'])).toEqual([
      { path: ['sources', 0], text: 'b' },
      { path: ['sources', 2], text: 'c' },
    ]);
  });

  it('finds nothing in data of another shape, nor in what data inherit', () => {
    for (const value of [null, 3, 'x', [], {}, { sources: 'x' }, { sources: { length: 1 } }])
      expect(textsAt(value, ['sources', '*'])).toEqual([]);
    expect(textAt({}, 'toString')).toBe('');
    expect(textAt([], 'length')).toBe('');
  });
});
