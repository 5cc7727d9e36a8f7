import { describe, expect, it } from 'vitest';
import type { RegionId } from '../../../shared/regions.js';
import { calculations, findCalculation } from '../../../shared/safety-maths/index.js';
import { CalculationInputError } from '../../../shared/safety-maths/inputs.js';

function results(id: string, inputs: Record<string, unknown>, region?: RegionId): Record<string, unknown> {
  const outcome = findCalculation(id)?.run(inputs, region);
  return Object.fromEntries(Object.entries(outcome?.result ?? {}).map(([name, { value }]) => [name, value]));
}

function fault(id: string, inputs: Record<string, unknown>): CalculationInputError | null {
  try {
    findCalculation(id)?.run(inputs);
    return null;
  } catch (error) {
    if (error instanceof CalculationInputError) return error;
    throw error;
  }
}

describe('the calculations, worked by hand where no published value is at hand', () => {
  it('adds the loads of an extension lead and holds them against the region', () => {
    // 2000 W + 990 W = 2990 W; 2990 / 230 = 13 A, the largest UK plug fuse; 2990 / 120 = 24.9 A, above 20 A.
    expect(results('extension-lead-load', { loads: [2000, 990] })).toEqual({ power: 2990, current: 13, within_rating: true });
    expect(results('extension-lead-load', { loads: [2000, 990, 1] })['within_rating']).toBe(false);
    expect(results('extension-lead-load', { loads: [2000, 990] }, 'eu')['within_rating']).toBe(true);
    expect(results('extension-lead-load', { loads: [2000, 990] }, 'na')['within_rating']).toBe(false);
  });

  it('takes the first listed fuse that is not below the current', () => {
    expect([2.9, 3, 3.01, 9, 13, 13.1].map((load) => results('fuse-from-current', { load })['fuse'])).toEqual([3, 3, 5, 10, 13, null]);
    expect(results('fuse-from-current', { load: 7.2, series: [15, 10, 7.5, 5] })).toEqual({ fuse: 7.5 });
    expect(results('fuse-from-current', { load: 12 }, 'na')).toEqual({ fuse: 15 });
  });

  it('takes supply voltage and listed ratings from the region', () => {
    // 1150 / 230 = 5 A; 1150 / 120 = 9.58 A.
    expect(results('fuse-from-power', { power: 1150 })).toEqual({ fuse: 5, current: 5 });
    expect(results('fuse-from-power', { power: 1150 }, 'eu')).toEqual({ fuse: 6, current: 5 });
    expect(results('fuse-from-power', { power: 1200 }, 'na')).toEqual({ fuse: 15, current: 10 });
  });

  it('shortens a half-wave wire by five per cent', () => {
    // 143 / 14.3 = 10 m, exactly.
    expect(results('half-wave-length', { frequency: 14.3 })['length']).toBeCloseTo(10, 12);
  });

  it('counts only the share of a battery that may be used', () => {
    // 20 Ah × 60 % / 2 A = 6 h.
    expect(results('battery-run-time', { capacity: 20, usable_share: 60, current: 2 })).toEqual({ time: 6 });
  });

  it('adds a margin to the radius of a falling mast, and gives no verdict without a distance', () => {
    expect(results('mast-fall-radius', { mast_height: 10, aerial_above_mast: 2, margin: 3 })).toEqual({
      fall_radius: 15,
      outside_fall_radius: null,
    });
    expect(results('mast-fall-radius', { mast_height: 10, margin: 3, horizontal_distance: 12.9 })['outside_fall_radius']).toBe(false);
  });

  it('takes an EIRP or power and gain for the distance to keep, and not both', () => {
    // 100 W × 10^(0 / 10) = 100 W EIRP.
    const limit = { limit: 2 };
    expect(results('compliance-distance', { power: 100, gain: 0, ...limit })).toEqual(
      results('compliance-distance', { eirp: 100, ...limit }),
    );
    expect(fault('compliance-distance', { eirp: 100, gain: 0, ...limit })?.input).toBe('gain');
    expect(fault('compliance-distance', { power: 100, ...limit })?.input).toBe('gain');
    expect(fault('compliance-distance', limit)?.input).toBe('eirp');
  });

  it('uses the rule that errs on the cautious side for lightning unless told otherwise', () => {
    // 9 s at 3 s to the kilometre: 3 km.
    expect(results('lightning-distance', { time: 9 })['distance']).toBeCloseTo(3, 12);
  });

  it('shows formula, numbers put in and result', () => {
    expect(findCalculation('current-from-power')?.run({ power: 2300 })).toEqual({
      region: 'uk',
      inputs: { power: { value: 2300, unit: 'W' }, voltage: { value: 230, unit: 'V' } },
      result: { current: { value: 10, unit: 'A' } },
      working: ['Current is power divided by voltage: I = P / V.', 'I = 2300\u202fW / 230\u202fV', 'I = 10\u202fA'],
    });
  });
});

describe('the list of calculations', () => {
  it('gives each an id of its own, inputs, outputs, a source, a caution and a working', () => {
    expect(new Set(calculations.map(({ id }) => id)).size).toBe(calculations.length);
    for (const { id, inputs, outputs, source, caution, formula, topic } of calculations) {
      expect([
        id,
        /^[a-z][a-z0-9-]{2,40}$/.test(id),
        inputs.length > 0,
        outputs.length > 0,
        source.length > 0,
        formula !== '',
        topic !== '',
      ]).toEqual([id, true, true, true, true, true, true]);
      expect(caution).toMatch(/^For learning, never a design approval\. /);
    }
  });

  it('answers to each published function only once', () => {
    const names = calculations.flatMap(({ checks }) => checks.map(({ name }) => name));
    expect(new Set(names).size).toBe(names.length);
  });

  it('gives finite results and a working of two steps or more at both ends of every range', () => {
    for (const { id, inputs, outputs, run } of calculations) {
      for (const end of ['min', 'max'] as const) {
        const given = Object.fromEntries(
          inputs
            .filter(({ optional }) => !optional)
            .map((input) => [input.name, input.kind === 'choice' ? input.choices?.[0] : input.kind === 'list' ? [input[end]] : input[end]]),
        );
        if (id === 'compliance-distance') given['eirp'] = 1;
        const outcome = run(given);
        const numbers = Object.values(outcome.result).filter(({ value }) => typeof value === 'number');
        expect([
          id,
          end,
          Object.keys(outcome.result),
          numbers.every(({ value }) => Number.isFinite(value)),
          outcome.working.length >= 2,
        ]).toEqual([id, end, outputs.map(({ name }) => name), true, true]);
        expect(outcome.working.join(' ')).not.toMatch(/NaN|undefined|—/);
      }
    }
  });
});

describe('an input that does not fit', () => {
  it.each([
    ['below its range', 'current-from-power', { power: -1 }, 'power', /out of range; give a number from 0/],
    ['above its range', 'ladder-base', { height: 31 }, 'height', /to 30\u202fm/],
    ['not a number', 'ladder-base', { height: NaN }, 'height', /is not a number/],
    ['infinite', 'ladder-base', { height: Infinity }, 'height', /is not a number/],
    ['a text', 'ladder-base', { height: '4' }, 'height', /is not a number/],
    ['missing', 'ladder-base', {}, 'height', /is missing; give a number from 0/],
    ['null', 'ladder-base', { height: null }, 'height', /is not a number/],
    ['unknown', 'ladder-base', { height: 4, width: 1 }, 'width', /no such input; there are height/],
    ['inherited', 'ladder-base', { height: 4, toString: 1 }, 'toString', /no such input/],
    ['a nought that would divide', 'resistance-from-voltage-and-current', { voltage: 1, current: 0 }, 'current', /out of range/],
    ['an empty list', 'extension-lead-load', { loads: [] }, 'loads', /1 to 100 numbers/],
    ['too long a list', 'extension-lead-load', { loads: Array.from({ length: 101 }, () => 1) }, 'loads', /1 to 100 numbers/],
    ['a list with one that does not fit', 'extension-lead-load', { loads: [1, -1] }, 'loads', /out of range/],
    ['not one of the choices', 'lightning-distance', { time: 3, rule: 'by ear' }, 'rule', /one of: speed of sound/],
    ['an end above the start', 'bleed-time', { resistance: 1, capacitance: 1, start: 10, end: 11 }, 'end', /above the start/],
  ])('is refused by name: %s', (_what, id, inputs, input, message) => {
    const error = fault(id, inputs);
    expect([error?.name, error?.input]).toEqual(['CalculationInputError', input]);
    expect(error?.message).toMatch(message);
  });
});
