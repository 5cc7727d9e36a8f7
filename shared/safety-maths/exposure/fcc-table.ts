import { law, limits } from './limit-bands.js';
import type { Law, LimitBand } from './limit-bands.js';

/** Figures of the FCC by frequency in MHz. */

/**
 * Limits of 47 CFR 1.1310, table 1; the rule prints S in mW/cm², 1 of which is 10 W/m². Two rows of the rule meet at each edge without
 * saying whose it is; taking the lower row gives the lower or the same limit at every one.
 */
export const fccLimits: Readonly<Record<'general population' | 'occupational', readonly [LimitBand, ...LimitBand[]]>> = {
  'general population': [
    limits(0.3, 1.34, law(614), law(1.63), law(1000)),
    limits(1.34, 30, law(824, -1), law(2.19, -1), law(1800, -2)),
    limits(30, 300, law(27.5), law(0.073), law(2)),
    limits(300, 1500, null, null, law(1 / 150, 1)),
    limits(1500, 100_000, null, null, law(10)),
  ],
  occupational: [
    limits(0.3, 3, law(614), law(1.63), law(1000)),
    limits(3, 30, law(1842, -1), law(4.89, -1), law(9000, -2)),
    limits(30, 300, law(61.4), law(0.163), law(10)),
    limits(300, 1500, null, null, law(1 / 30, 1)),
    limits(1500, 100_000, null, null, law(50)),
  ],
};

/** A row of the exemption: the ERP in W is the figure times the square of the distance in m. */
interface ExemptionBand {
  readonly from: number;
  readonly to: number;
  readonly perSquareMetre: Law;
}

/** Exemption of 47 CFR 1.1307(b)(3)(i)(C), table 1, for distances of λ/2π or more. The row from 1.34 to 30 MHz is from memory. */
export const fccExemptions: readonly [ExemptionBand, ...ExemptionBand[]] = [
  { from: 0.3, to: 1.34, perSquareMetre: law(1920) },
  { from: 1.34, to: 30, perSquareMetre: law(3450, -2) },
  { from: 30, to: 300, perSquareMetre: law(3.83) },
  { from: 300, to: 1500, perSquareMetre: law(0.0128, 1) },
  { from: 1500, to: 100_000, perSquareMetre: law(19.2) },
];
