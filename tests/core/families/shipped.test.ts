import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { acceptNumber, checkFamily, fourOptions, type CompiledFamily } from '../../../src/core/families/draw.js';
import { fairFigures, type Figures } from '../../../src/core/families/figures.js';
import { work } from '../../../src/core/families/work.js';
import type { Region } from '../../../src/core/syllabus.js';
import { byHand } from './by-hand.js';
import { compiledFor, familyNamed, gridOf, shipped, variants } from './shipped.js';

interface Example {
  family: string;
  region: Region;
  story: number;
  inputs: Record<string, number>;
  question: string;
  exact: number;
  shown: number;
  unit: string;
  acceptFrom: number;
  acceptTo: number;
  wrong: { name: string; value: number }[];
  steps: string[];
}
// Source: see the file's own `source` line; worked by a program independent of this one.
const reference = JSON.parse(readFileSync(new URL('../../data/numeric-families-examples.json', import.meta.url), 'utf8')) as {
  examples: Example[];
  grids: { family: string; region: Region; grid: number; meetConstraints: number; usable: number }[];
};

/** Equal to so many significant figures, the precision in which the reference is given. */
function expectNear(got: number, expected: number, figures: number): void {
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(0.501 * 10 ** (1 - figures) * Math.abs(expected) + 1e-12);
}

describe('the shipped families against their worked examples', () => {
  it('are 53, and have 361 worked examples, some for each', () => {
    expect(shipped.map(({ id }) => id)).toHaveLength(53);
    expect(reference.examples).toHaveLength(361);
    expect(new Set(reference.examples.map(({ family }) => family)).size).toBe(53);
  });

  it.each(reference.examples.map((example, i) => [i, example.family, example.region, example] as const))(
    'work example %i of %s in %s: question, answer, window, wrong values and steps',
    (_i, family, region, example) => {
      const worked = work(compiledFor(family, region), example.inputs, example.story);
      expect(worked.stem).toBe(example.question);
      expectNear(worked.key.value, example.exact, 8);
      expect(worked.key.shown).toBe(example.shown);
      expect(worked.key.unit).toBe(example.unit);
      expectNear(worked.key.acceptFrom, example.acceptFrom, 6);
      expectNear(worked.key.acceptTo, example.acceptTo, 6);
      expect(worked.tellTales.map(({ name }) => name)).toEqual(example.wrong.map(({ name }) => name));
      worked.tellTales.forEach(({ value }, i) => expectNear(value, example.wrong[i]?.value ?? NaN, 4));
      expect(worked.steps).toEqual(example.steps);
    },
  );

  it.each(reference.grids.map((row) => [row.family, row.region, row] as const))(
    'have as many fair sets of numbers as counted for %s in %s',
    (family, region, row) => {
      const compiled = compiledFor(family, region);
      const sets = [...gridOf(compiled)];
      expect(sets).toHaveLength(row.grid);
      expect(sets.filter((inputs) => fairFigures(compiled, inputs) !== null)).toHaveLength(row.usable);
    },
  );
});

/** What `look` finds amiss over all fair sets of numbers; and that there were some. */
function amiss(compiled: CompiledFamily, look: (figures: Figures, inputs: Record<string, number>) => boolean): Record<string, number>[] {
  let fair = 0;
  const found = [...gridOf(compiled)].flatMap((inputs) => {
    const figures = fairFigures(compiled, inputs);
    if (figures === null) return [];
    fair += 1;
    return look(figures, Object.fromEntries(inputs)) ? [] : [Object.fromEntries(inputs)];
  });
  expect(fair).toBeGreaterThan(0);
  return found;
}

describe('every set of numbers of the shipped families', () => {
  it.each(variants)('of %s in %s has the answer found by hand', (family, region, compiled) => {
    expect(amiss(compiled, ({ key }, inputs) => Math.abs(key.value / (byHand[family]?.(inputs, region) ?? NaN) - 1) < 1e-9)).toEqual([]);
  });

  it.each(variants)(
    'of %s in %s has its printed answer inside the window and every usable tell-tale outside, also to three figures',
    (_family, _region, compiled) => {
      const apart = (figures: Figures): boolean =>
        figures.tellTales.every(({ value }) => !acceptNumber(figures, value) && !acceptNumber(figures, Number(value.toPrecision(3))));
      expect(amiss(compiled, (figures) => acceptNumber(figures, figures.key.shown) && apart(figures))).toEqual([]);
    },
  );

  // The review of the families found three believable wrong values in every numeric draw.
  it.each(variants.filter(([, , compiled]) => compiled.variant.answer.kind === 'number'))(
    'of %s in %s makes four options that differ',
    (_family, _region, compiled) => {
      const four = (figures: Figures): boolean => {
        const options = fourOptions({ kind: 'number', ...figures }) ?? [];
        return new Set(options.map(({ text }) => text)).size === 4 && options.filter(({ tellTale }) => tellTale === null).length === 1;
      };
      expect(amiss(compiled, four)).toEqual([]);
    },
  );
});

describe('what an editor must keep in the shipped families', () => {
  it.each(shipped.map((family) => [family.id, family] as const))('%s has no fault', (_id, family) => {
    expect(checkFamily(family)).toEqual([]);
  });

  it('no answer hangs on a figure from memory', () => {
    for (const [, , compiled] of variants) {
      for (const { basis } of Object.values(compiled.variant.constants)) expect(basis).not.toBe('memory');
    }
  });

  it('a mains circuit without a plug fuse prints the caution on fixed wiring', () => {
    const family = familyNamed('nf-current-from-power');
    expect(family.caution).toBe('plug');
    expect(family.regions.eu.override?.caution).toBe('mains');
    expect(family.regions.na.override?.caution).toBe('mains');
  });

  it('work is left to an electrician, and a radio licence is never taken for more than it is', () => {
    expect(JSON.stringify(shipped)).not.toMatch(/licensed person/i);
  });
});
