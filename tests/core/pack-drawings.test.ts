import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../src/core/drawing.js';
import { checkPack } from '../../src/core/pack-checks.js';
import { sampleOf, twoShapes } from '../support/kind-samples.js';
import { smallPack } from '../support/small-pack.js';

/** A pack with one question about places, on a drawing with these changes. */
function rulesOf(change: (drawing: Drawing) => Drawing, place = sampleOf('place')): string[] {
  const pack = smallPack();
  const before = new Set(checkPack(pack).map(({ rule }) => rule));
  const questions = [...pack.questions.filter(({ id }) => id !== place.id), place];
  const found = checkPack({ ...pack, questions, drawings: [change(structuredClone(twoShapes))] });
  return found
    .filter(({ rule }) => rule.startsWith('drawing') || rule.includes('part') || (!before.has(rule) && rule === 'same-option'))
    .map(({ rule }) => rule);
}

describe('the drawings of a pack', () => {
  it('are taken when each mark has room and each place is a part', () => {
    expect(rulesOf((drawing) => drawing)).toEqual([]);
  });

  it('are refused when two marks cover one another, since they would stand for the wrong part', () => {
    const crowded = (drawing: Drawing): Drawing => {
      const [first, second, ...rest] = drawing.parts;
      if (first === undefined || second === undefined) throw new Error('two parts at least');
      return { ...drawing, parts: [first, { ...second, at: [first.at[0] + 3, first.at[1]] }, ...rest] };
    };
    expect(rulesOf(crowded)).toEqual(['drawing-marks']);
  });

  it('are missed part by part, with the name that was meant', () => {
    const question = sampleOf('place');
    const [first, ...others] = question.places;
    if (first === undefined) throw new Error('places');
    const strange = { ...question, places: [{ ...first, part: `${first.part}x` }, ...others] };
    expect(rulesOf((drawing) => drawing, strange)).toEqual(['missing-part']);
  });
});
