import { CalculationInputError } from '../inputs.js';
import { put } from '../working.js';

/** A wire by its American gauge: the number, 0 for 1/0, −1 for 2/0 and so on. */
export interface Gauge {
  /** mm. */
  readonly diameter: number;
  /** mm². */
  readonly area: number;
  /** Ω/km of solid copper at 20 °C. */
  readonly resistance: number;
}

/** d = 0.127 mm × 92^((36 − n) / 39); A = π d² / 4; R = 17.241 / A. Throws CalculationInputError if not whole. Source: ASTM B258. */
export function gaugeOf(awg: number): Gauge {
  if (!Number.isInteger(awg)) throw new CalculationInputError('awg', `${put(awg, '')} is not a gauge; give a whole number`);
  const diameter = 0.127 * 92 ** ((36 - awg) / 39);
  const area = (Math.PI * diameter * diameter) / 4;
  return { diameter, area, resistance: 17.241 / area };
}
