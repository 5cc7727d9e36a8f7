import { describe, expect, it } from 'vitest';
import { checkRecord } from '../../../shared/safety-maths/check-record.js';
import { calculations } from '../../../shared/safety-maths/index.js';
import { publishedValues as records, type Published } from '../../support/published-values.js';

describe('the safety maths against published values', () => {
  // What could only be given from memory is run as well, and says so in its name.
  const origin = ({ source, reverify }: Published): string => (reverify ? `${source.title} (from memory, to be looked up)` : source.title);
  it.each(records.map((record) => [record.id, record.function, origin(record), record] as const))(
    '%s: %s, from %s',
    (_id, _name, _title, record) => {
      expect(checkRecord(record)).toMatchObject({ outcome: 'passed' });
    },
  );

  it('holds at least 200 values, none twice, for all but a few calculations', () => {
    expect(records.length).toBeGreaterThanOrEqual(200);
    expect(new Set(records.map(({ id }) => id)).size).toBe(records.length);
    const held = new Set(records.map((record) => record.function));
    // No published value is at hand for these; calculations.test.ts and by-hand.test.ts work them by hand.
    expect(calculations.filter(({ checks }) => !checks.some(({ name }) => held.has(name))).map(({ id }) => id)).toEqual([
      'wrong-supply-power',
      'fault-current-to-earth',
      'leakage-sum',
      'power-left-on-a-fuse',
      'flex-for-load',
      'extension-lead-load',
      'cable-drum-load',
      'run-time-transmit-receive',
      'charging-time',
      'batteries-in-parallel',
      'radio-input-current',
      'ladder-height-from-base',
      'overhead-line-clearance',
      'wire-swing-clearance',
      'half-wave-length',
      'rf-voltage',
      'distance-for-field-limit',
      'power-density-elsewhere',
    ]);
  });

  it('finds every value that is one part in fifty off', () => {
    const spoilt = records.filter(({ expected, tolerance }) => {
      const [value] = Object.values(expected);
      return (
        typeof value === 'number' &&
        value !== 0 &&
        (tolerance.type === 'relative' ? tolerance.value : tolerance.value / Math.abs(value)) < 0.009
      );
    });
    expect(spoilt.length).toBeGreaterThan(150);
    for (const record of spoilt) {
      const expected = Object.fromEntries(
        Object.entries(record.expected).map(([key, value]) => [key, typeof value === 'number' ? value * 1.02 : value]),
      );
      expect(checkRecord({ ...record, expected }).outcome).toBe('failed');
    }
  });

  const record = {
    id: 'x',
    function: 'current from power and voltage',
    inputs: { power_W: 2300, voltage_V: 230 },
    expected: { current_A: 10 },
    tolerance: { type: 'absolute', value: 0 },
  } as const;

  it('turns units that stand in the keys', () => {
    const other = { ...record, inputs: { power_kW: 2.3, voltage_V: 230 }, expected: { current_mA: 10000 } };
    expect(checkRecord(other)).toMatchObject({ outcome: 'passed', got: { current_mA: 10000 } });
  });

  it('tells a function it does not have from one that fails', () => {
    expect(checkRecord({ ...record, function: 'weight of the moon' })).toMatchObject({ outcome: 'unknown', got: null });
    expect(checkRecord({ ...record, expected: { current_A: 11 } })).toMatchObject({ outcome: 'failed', got: { current_A: 10 } });
    expect(checkRecord({ ...record, expected: { height_m: 10 } })).toMatchObject({ outcome: 'failed' });
    expect(checkRecord({ ...record, inputs: { power_W: 2300, colour: 3 } })).toMatchObject({ outcome: 'failed' });
    expect(checkRecord({ ...record, inputs: { power_W: -1 } })).toMatchObject({ outcome: 'failed' });
    expect(checkRecord({ ...record, inputs: { power_W: 'much' } })).toMatchObject({ outcome: 'failed' });
  });
});
