import { describe, expect, it } from 'vitest';
import { byNeed, levelOf } from '../../../src/core/classes/level.js';

describe('a cell of the class grid', () => {
  it.each([
    [{ chance: null, met: 0, of: 20 }, 'none'],
    [{ chance: 0.99, met: 2, of: 20 }, 'few'],
    [{ chance: 0.99, met: 2, of: 2 }, 'high'],
    [{ chance: 0.594, met: 3, of: 20 }, 'low'],
    [{ chance: 0.596, met: 3, of: 20 }, 'mid'],
    [{ chance: 0.794, met: 9, of: 20 }, 'mid'],
    [{ chance: 0.796, met: 9, of: 20 }, 'high'],
  ] as const)('%j reads as %s', (cell, level) => {
    expect(levelOf(cell)).toBe(level);
  });
});

describe('the order of need', () => {
  it('puts those of whom too little is known first, then the least likely to pass, and last whoever has answered nothing', () => {
    const people = [
      { name: 'Odo', chance: 0.7, answers: 90 },
      { name: 'Wren', chance: null, answers: 12 },
      { name: 'Ivo', chance: 0.2, answers: 300 },
      { name: 'Alba', chance: null, answers: 0 },
      { name: 'Bede', chance: 0.7, answers: 90 },
    ];
    expect([...people].sort(byNeed).map(({ name }) => name)).toEqual(['Wren', 'Ivo', 'Bede', 'Odo', 'Alba']);
  });
});
