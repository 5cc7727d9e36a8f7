import { law, limits } from './limit-bands.js';
import type { LimitBand } from './limit-bands.js';

/** Reference levels of ICNIRP and action levels of the EU that follow them, by frequency in MHz: E in V/m, H in A/m, S in W/m². */

type Bands = readonly [LimitBand, ...LimitBand[]];
type ByCategory = Readonly<Record<'general public' | 'occupational', Bands>>;

/** ICNIRP 2020, table 5: whole body, averaged over 30 minutes. The table's own edges: above 30 MHz, above 400 MHz, above 2 GHz. */
export const wholeBody2020: ByCategory = {
  'general public': [
    limits(0.1, 30, law(300, -0.7), law(2.2, -1), null),
    limits(30, 400, law(27.7), law(0.073), law(2)),
    limits(400, 2000, law(1.375, 0.5), law(0.0037, 0.5), law(1 / 200, 1)),
    limits(2000, 300_000, null, null, law(10)),
  ],
  occupational: [
    limits(0.1, 30, law(660, -0.7), law(4.9, -1), null),
    limits(30, 400, law(61), law(0.16), law(10)),
    limits(400, 2000, law(3, 0.5), law(0.008, 0.5), law(1 / 40, 1)),
    limits(2000, 300_000, null, null, law(50)),
  ],
};

/** ICNIRP 2020, table 6: a part of the body, averaged over 6 minutes. Edges as in table 5, and above 6 GHz; 300 GHz has its own row. */
export const local2020: ByCategory = {
  'general public': [
    limits(0.1, 30, law(671, -0.7), law(4.9, -1), null),
    limits(30, 400, law(62), law(0.163), law(10)),
    limits(400, 2000, law(4.72, 0.43), law(0.0123, 0.43), law(0.058, 0.86)),
    limits(2000, 6000, null, null, law(40)),
    limits(6000, 299_999.999, null, null, law(55, -0.177, 'GHz')),
    limits(300_000, 300_000, null, null, law(20)),
  ],
  occupational: [
    limits(0.1, 30, law(1504, -0.7), law(10.8, -1), null),
    limits(30, 400, law(139), law(0.36), law(50)),
    limits(400, 2000, law(10.58, 0.43), law(0.0274, 0.43), law(0.29, 0.86)),
    limits(2000, 6000, null, null, law(200)),
    limits(6000, 299_999.999, null, null, law(275, -0.177, 'GHz')),
    limits(300_000, 300_000, null, null, law(100)),
  ],
};

/** ICNIRP 1998, tables 6 and 7, averaged over 6 minutes; Council Recommendation 1999/519/EC has the same for the public. */
export const reference1998: ByCategory = {
  'general public': [
    limits(0.1, 0.15, law(87), law(5), null),
    limits(0.15, 1, law(87), law(0.73, -1), null),
    limits(1, 10, law(87, -0.5), law(0.73, -1), null),
    limits(10, 400, law(28), law(0.073), law(2)),
    limits(400, 2000, law(1.375, 0.5), law(0.0037, 0.5), law(1 / 200, 1)),
    limits(2000, 300_000, law(61), law(0.16), law(10)),
  ],
  occupational: [
    limits(0.1, 1, law(610), law(1.6, -1), null),
    limits(1, 10, law(610, -1), law(1.6, -1), null),
    limits(10, 400, law(61), law(0.16), law(10)),
    limits(400, 2000, law(3, 0.5), law(0.008, 0.5), law(1 / 40, 1)),
    limits(2000, 300_000, law(137), law(0.36), law(50)),
  ],
};
