import type { Outcome } from '../../shared/safety-maths/calculation.js';
import { field, limitDistance } from './antenna-drawings.js';
import { fuses, lead } from './electric-drawings.js';
import { ladderFrom, mast } from './height-drawings.js';
import type { Drawing } from './page-types.js';

/** Which calculation has a drawing. To scale where a shape is meant, a scheme where it is not, and then it says so. */

const byCalculation: Readonly<Record<string, (outcome: Outcome) => Drawing | null>> = {
  'ladder-base': ladderFrom(false),
  'ladder-angle': ladderFrom(false),
  'ladder-reach': ladderFrom(false),
  'ladder-height-from-base': ladderFrom(false),
  'ladder-length-for-landing': ladderFrom(true),
  'fuse-from-power': fuses,
  'fuse-from-current': fuses,
  'dc-voltage-drop': lead,
  'compliance-distance': limitDistance,
  'distance-for-field-limit': limitDistance,
  'station-distance': limitDistance,
  'power-density-elsewhere': field('power_density'),
  'power-density': field('power_density'),
  'field-strength': field('electric_field'),
  'mast-fall-radius': mast,
};

/** The drawing for a calculation, or null where none helps or the numbers cannot be drawn. */
export const drawingFor = (id: string, outcome: Outcome): Drawing | null => byCalculation[id]?.(outcome) ?? null;
