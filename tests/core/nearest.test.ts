import { describe, expect, it } from 'vitest';
import { nearest } from '../../src/core/nearest.js';

describe('nearest', () => {
  const words = ['stem', 'sources', 'explanation', 'checked'];

  it('finds the word that is one or two letters away, whatever its case', () => {
    expect([nearest('sorces', words), nearest('Explanaton', words), nearest('STEM', words), nearest('chekced', words)]).toEqual([
      'sources',
      'explanation',
      'stem',
      'checked',
    ]);
  });

  it('finds nothing for a word that is further away', () => {
    expect([nearest('colour', words), nearest('explain', words), nearest('', words), nearest('x', ['y'])]).toEqual([
      null,
      null,
      null,
      null,
    ]);
  });

  it('allows a short word fewer letters than a long one', () => {
    expect([nearest('ab', ['cd']), nearest('ab', ['ac'])]).toEqual([null, 'ac']);
  });

  it('takes the first of two words that are equally near', () => {
    expect(nearest('LA-03', ['LA-02', 'LA-04'])).toBe('LA-02');
  });

  it('answers at once for a word of any length', () => {
    expect(nearest('x'.repeat(100_000), ['x'.repeat(100_001)])).toBeNull();
  });
});
