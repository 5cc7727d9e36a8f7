import { law } from './limit-bands.js';
import type { Law } from './limit-bands.js';

/** A row of the lower action levels; f in MHz. */
interface ActionBand {
  readonly from: number;
  /** The row ends below this frequency: an edge belongs to the upper row. */
  readonly below: number;
  readonly electric: Law;
  readonly density: Law | null;
}

/**
 * Lower action levels of Directive 2013/35/EU for workers, E in V/m and S in W/m², as Norway's Labour Inspection Authority prints them in
 * one table. It gives f in Hz: 6.1 × 10⁸ / f is 610 / f in MHz, 0.003 × √f is 3 × √f in MHz.
 */
export const euWorkerLevels: readonly [ActionBand, ...ActionBand[]] = [
  { from: 0.003, below: 3.59, electric: law(170), density: null },
  { from: 3.59, below: 10, electric: law(610, -1), density: null },
  { from: 10, below: 400, electric: law(61), density: null },
  { from: 400, below: 2000, electric: law(3, 0.5), density: null },
  { from: 2000, below: Infinity, electric: law(140), density: law(50) },
];
