import { out } from '../working.js';

/** Speed of light in free space, m/s, by definition (SI Brochure). */
const lightSpeed = 299_792_458;

/**
 * λ/2π in m for a frequency in MHz: nearer than this, formulas for a wave in free space are of no use. A large antenna needs much more.
 */
export const nearestUse = (frequency: number): number => lightSpeed / (frequency * 1e6) / (2 * Math.PI);

/** Whether a distance in m is far enough for the formula, as a step; none without a frequency in MHz. */
export function nearFieldSteps(distance: number, frequency: number | undefined): string[] {
  if (frequency === undefined) return [];
  const least = nearestUse(frequency);
  return [
    distance < least
      ? `${out(distance, 'm')} is nearer than λ / 2π = ${out(least, 'm')}, where this formula is no use: keep people further away and use your regulator’s method.`
      : `${out(distance, 'm')} is beyond λ / 2π = ${out(least, 'm')}; a large antenna needs more room before the formula holds.`,
  ];
}
