import { source } from './source.js';
import type { MathsSource } from './source.js';

/** Sources of sound levels and noise exposure. */
export const noiseSources = {
  ukNoise: source(
    'uk-noise',
    'Control of Noise at Work Regulations: exposure limit values and action values',
    'UK legislation (Northern Ireland 2006/1, same values as Great Britain 2005/1643)',
    2006,
    'regulation 4',
    'read',
  ),
  dailyNoise: source(
    'l108',
    'Controlling noise at work (L108): L_EP,d = L_Aeq + 10 log10(T / 8 h)',
    'HSE',
    2021,
    'third edition, exposure calculation',
    'computed',
  ),
  soundLevels: source(
    'iso9613-2',
    'ISO 9613-2 Attenuation of sound during propagation outdoors: adding levels, spherical spreading',
    'ISO',
    1996,
    'geometric divergence, 20 log10(r)',
    'computed',
  ),
} as const satisfies Record<string, MathsSource>;
