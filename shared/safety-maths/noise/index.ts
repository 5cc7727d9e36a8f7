import type { Calculation } from '../calculation.js';
import { allowedNoiseTime } from './allowed-noise-time.js';
import { noiseAtAnotherDistance } from './noise-at-another-distance.js';
import { noiseDoseOfADay } from './noise-dose-of-a-day.js';
import { noiseDose } from './noise-dose.js';
import { sumOfSoundLevels } from './sum-of-sound-levels.js';
import { ukNoiseValues } from './uk-noise-values.js';

export const noise: readonly Calculation[] = [
  allowedNoiseTime,
  noiseDose,
  noiseDoseOfADay,
  sumOfSoundLevels,
  noiseAtAnotherDistance,
  ukNoiseValues,
];
