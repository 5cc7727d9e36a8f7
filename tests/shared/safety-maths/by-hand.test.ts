import { describe, expect, it } from 'vitest';
import type { RegionId } from '../../../shared/regions.js';
import { findCalculation } from '../../../shared/safety-maths/index.js';

type Row = readonly [id: string, inputs: Record<string, unknown>, region: RegionId, expected: Record<string, unknown>];

/** Worked with pencil and paper from the law named beside each: no published value is at hand for these. */
const rows: Row[] = [
  // Ohm's law at one resistance: (240 / 120)² = 4, (120 / 240)² = 1/4.
  ['wrong-supply-power', { rated_power: 25, rated_voltage: 120, voltage: 240 }, 'uk', { power: 100, times_rated: 4 }],
  ['wrong-supply-power', { rated_power: 100, rated_voltage: 240 }, 'na', { power: 25, times_rated: 0.25 }],
  // 230 / (20 + 3) = 10; 120 / (20 + 4) = 5.
  ['fault-current-to-earth', { rod_resistance: 20, return_resistance: 3 }, 'uk', { current: 10 }],
  ['fault-current-to-earth', { rod_resistance: 20, return_resistance: 4 }, 'na', { current: 5 }],
  // 4 × 1.5 + 2 × 1.5 = 9, which is 30 % of 30; one more tenth is above it.
  [
    'leakage-sum',
    { number_first: 4, leakage_first: 1.5, number_second: 2, leakage_second: 1.5 },
    'uk',
    { total: 9, share_of_rcd: 30, within_30_percent: true },
  ],
  ['leakage-sum', { number_first: 1, leakage_first: 9.1 }, 'eu', { total: 9.1, within_30_percent: false }],
  // 230 × 13 = 2990; 2990 - 2000 = 990. 120 × 15 = 1800, already passed by 2000.
  ['power-left-on-a-fuse', { fuse: 13, used_power: 2000 }, 'uk', { power_left: 990, overloaded: false }],
  ['power-left-on-a-fuse', { fuse: 15, used_power: 2000 }, 'na', { power_left: 0, overloaded: true }],
  // 690 / 230 = 3, so a 3 A fuse and the 0.5 mm² flex; 920 / 230 = 4, so 5 A and 0.75 mm² (6 A).
  ['flex-for-load', { power: 690 }, 'uk', { current: 3, fuse: 3, conductor_area: 0.5 }],
  ['flex-for-load', { power: 920 }, 'uk', { current: 4, fuse: 5, conductor_area: 0.75 }],
  ['flex-for-load', { power: 4600 }, 'uk', { current: 20, fuse: null, conductor_area: null }],
  // 230 × 5 = 1150; 1150 - 400 = 750; 230 × 13 = 2990.
  [
    'cable-drum-load',
    { wound_rating: 5, used_power: 400, unwound_rating: 13 },
    'uk',
    { power_left: 750, overloaded: false, wound_power: 1150, unwound_power: 2990 },
  ],
  // 20 × 0.25 + 1 × 0.75 = 5.75; 46 / 5.75 = 8.
  [
    'run-time-transmit-receive',
    { transmit_current: 20, receive_current: 1, transmit_share: 25, capacity: 46 },
    'uk',
    { time: 8, average_current: 5.75 },
  ],
  // 50 × 0.6 = 30; 5 × 0.75 = 3.75; 30 / 3.75 = 8.
  ['charging-time', { capacity: 50, used_share: 60, current: 5, stored_share: 75 }, 'uk', { time: 8, charge: 30 }],
  // 12 / 0.02 = 600; three of them 1800; 3 × 36 = 108.
  [
    'batteries-in-parallel',
    { number: 3, emf: 12, internal_resistance: 20, capacity: 36 },
    'uk',
    { current: 1800, current_of_one: 600, total_capacity: 108 },
  ],
  // 100 / 0.5 = 200; 200 / 12.5 = 16; 200 - 100 = 100.
  ['radio-input-current', { output_power: 100, efficiency: 50, voltage: 12.5 }, 'uk', { current: 16, input_power: 200, heat: 100 }],
  // Pythagoras: 4 up, 1 out, √17 = 4.12310563.
  ['ladder-height-from-base', { base: 1 }, 'uk', { height: 4, length: 4.12310563 }],
  ['overhead-line-clearance', { height: 8, multiplier: 1.5 }, 'uk', { distance: 12 }],
  ['overhead-line-clearance', { height: 8 }, 'uk', { distance: 16 }],
  // 143 / 7.15 = 20; 468 / 7.8 = 60 ft = 18.288 m (0.3048 m to the foot).
  ['wire-swing-clearance', { frequency: 7.15, margin: 5 }, 'uk', { distance: 25, length: 20 }],
  ['wire-swing-clearance', { frequency: 7.8, margin: 0 }, 'na', { distance: 18.288, length: 18.288 }],
  // √(100 × 49) = 70; × √2 = 98.9949494.
  ['rf-voltage', { power: 100, resistance: 49 }, 'uk', { voltage_rms: 70, voltage_peak: 98.9949494 }],
  // √(30 × 120) = 60; 60 / 20 = 3, doubled by a field factor of two.
  ['distance-for-field-limit', { eirp: 120, limit: 20 }, 'uk', { distance: 3 }],
  ['distance-for-field-limit', { eirp: 120, limit: 20, field_factor: 2 }, 'uk', { distance: 6 }],
  // Half as far again, (2 / 3)² = 4 / 9 of it.
  ['power-density-elsewhere', { known_power_density: 9, known_distance: 2, distance: 3 }, 'uk', { power_density: 4 }],
];

describe('the calculations without a published value, worked by hand', () => {
  it.each(rows)('%s of %j in %s', (id, inputs, region, expected) => {
    const result = findCalculation(id)?.run(inputs, region).result ?? {};
    for (const [name, value] of Object.entries(expected)) {
      const got = result[name]?.value;
      if (typeof value === 'number') expect(got).toBeCloseTo(value, 6);
      else expect(got).toBe(value);
    }
  });
});
