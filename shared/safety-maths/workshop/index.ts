import type { Calculation } from '../calculation.js';
import { fahrenheitToCelsius } from './fahrenheit-to-celsius.js';
import { liftingGuideline } from './lifting-guideline.js';
import { liftingReduced } from './lifting-reduced.js';
import { liftingOften, liftingTwisted } from './lifting-reductions.js';
import { pushOrPull } from './push-or-pull.js';
import { solderFumeLimit } from './solder-fume-limit.js';
import { solderTemperatures } from './solder-temperatures.js';
import { timeToABurn } from './time-to-a-burn.js';
import { touchTemperature } from './touch-temperature.js';

export const workshop: readonly Calculation[] = [
  solderTemperatures,
  solderFumeLimit,
  fahrenheitToCelsius,
  timeToABurn,
  touchTemperature,
  liftingGuideline,
  liftingOften,
  liftingTwisted,
  liftingReduced,
  pushOrPull,
];
