import { describe, expect, it } from 'vitest';
import { familySchema } from '../../../src/core/families/schema.js';
import { answerWith, invented } from './invented.js';

const pathsOf = (family: unknown): string[] => {
  const result = familySchema.safeParse(family);
  return result.success ? [] : result.error.issues.map(({ path }) => path.join('.'));
};

describe('the shape of a family', () => {
  it('takes a sound one, and fills in what may be left out', () => {
    expect(familySchema.parse(invented())).toMatchObject({ derived: {}, constraints: [], mayCoincide: [] });
  });

  it('refuses a key that it does not know, at its place', () => {
    expect(pathsOf(invented({ misconceptions: [] }))).toEqual(['']);
    expect(pathsOf(invented({ formula: { words: 'a', symbols: 'b', more: 1 } }))).toEqual(['formula']);
  });

  it('takes nothing from an own __proto__', () => {
    const { derived } = familySchema.parse(invented({ derived: JSON.parse('{"__proto__": "P"}') as unknown }));
    expect(Object.getOwnPropertyNames(derived)).toEqual([]);
    expect(Object.getPrototypeOf(derived)).toBe(Object.prototype);
  });

  it.each([
    ['a step of nothing', { inputs: { P: { label: 'p', unit: 'W', min: 1, max: 2, step: 0 } } }],
    ['an empty range', { inputs: { P: { label: 'p', unit: 'W', min: 2, max: 1, step: 1 } } }],
    ['a range of too many steps', { inputs: { P: { label: 'p', unit: 'W', min: 0, max: 1e9, step: 1 } } }],
    ['no choices', { inputs: { P: { label: 'p', unit: 'W', choices: [] } } }],
    ['an endless number', { inputs: { P: { label: 'p', unit: 'W', choices: [Infinity] } } }],
    ['a number beyond reason', { inputs: { P: { label: 'p', unit: 'W', choices: [1e300] } } }],
    ['a name that starts small', { inputs: { power: { label: 'p', unit: 'W', choices: [1] } } }],
    ['the name constructor', { derived: { constructor: 'P' } }],
    [
      'too many inputs',
      { inputs: Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`P${i}`, { label: 'p', unit: 'W', choices: [1] }])) },
    ],
    ['a story of 601 letters', { stories: ['x'.repeat(601)] }],
    ['a formula of 501 letters', { derived: { D: 'P'.repeat(501) } }],
    ['no story', { stories: [] }],
    ['decimals and figures both', { answer: answerWith({ round: { mode: 'up', dp: 1, sf: 2 } }) }],
    ['neither decimals nor figures', { answer: answerWith({ round: { mode: 'up' } }) }],
    ['a window wider than half', { answer: answerWith({ accept: { belowRel: 0.6, aboveRel: 0, belowAbs: 0, aboveAbs: 0, sigFigs: 0 } }) }],
    ['an unknown direction', { tellTales: [{ name: 'a', label: 'a', expr: '1', direction: 'bad', tell: 'a' }] }],
    ['a missing region', { regions: { uk: { available: true }, eu: { available: true } } }],
    [
      'an override of what may not change',
      { regions: { uk: { available: true, override: { id: 'x' } }, eu: { available: true }, na: { available: true } } },
    ],
  ])('refuses %s', (_what, changes) => {
    expect(pathsOf(invented(changes)).length).toBeGreaterThan(0);
  });
});
