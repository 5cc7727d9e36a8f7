import type { Calculation } from '../calculation.js';
import { cableReelCurrents } from './cable-reel-currents.js';
import { cableReelFigures } from './cable-reel-figures.js';
import { cableReelLoad } from './cable-reel-load.js';
import { cableReelRating } from './cable-reel-rating.js';
import { carbonMonoxideLimits } from './carbon-monoxide-limits.js';
import { earthRodResistance } from './earth-rod-resistance.js';
import { generatorLoad } from './generator-load.js';
import { ipFirstNumeral } from './ip-first-numeral.js';
import { ipSecondNumeral } from './ip-second-numeral.js';
import { outdoorRcd } from './outdoor-rcd.js';
import { splashProof } from './splash-proof.js';

export const outdoors: readonly Calculation[] = [
  cableReelLoad,
  cableReelCurrents,
  cableReelRating,
  cableReelFigures,
  generatorLoad,
  earthRodResistance,
  outdoorRcd,
  splashProof,
  ipFirstNumeral,
  ipSecondNumeral,
  carbonMonoxideLimits,
];
