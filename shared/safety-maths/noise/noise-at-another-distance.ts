import { calculation } from '../calculation.js';
import { quantity } from '../inputs.js';
import { out, put } from '../working.js';

const distance = { min: 0.1, max: 10_000 };

/**
 * The sound level at another distance from a small source in the open: L_new = L − 20 log10(d_new / d). Levels in dB(A), distances in m.
 * Source: spherical spreading, ISO 9613-2.
 */
export const noiseAtAnotherDistance = calculation({
  id: 'noise-at-another-distance',
  title: 'Noise farther off or nearer by',
  topic: 'noise',
  formula: 'L_new = L − 20 × log10(d_new / d)',
  inputs: {
    level: quantity('sound level', 'dB(A)', { min: 0, max: 160 }),
    distance: quantity('distance it was measured at', 'm', distance),
    new_distance: quantity('distance you ask about', 'm', distance),
  },
  outputs: { level: 'dB(A)' },
  sources: ['soundLevels'],
  validity: 'A small source in the open air; indoors and near walls the level falls off less, and very near the source it stops rising.',
  foundBy: ['generator noise', 'how far away is it quiet', 'noise and distance', 'decibels at 7 metres', 'neighbours'],
  caution: 'noise',
  checks: ['level at another distance (free field)'],
  work({ level, distance: from, new_distance: to }) {
    const change = 20 * Math.log10(to / from);
    const there = level - change;
    const ratio = `${put(to, 'm')} / ${put(from, 'm')}`;
    return {
      result: { level: there },
      steps: [
        `L_new = L − 20 × log10(d_new / d) = ${put(level, 'dB(A)')} − 20 × log10(${ratio}) = ${out(there, 'dB(A)')}`,
        change < 0 ? `Nearer by: ${out(-change, 'dB')} more.` : `Farther off: ${out(change, 'dB')} less.`,
        'Twice the distance takes 6 dB off in the open; walls and hard ground make the real drop smaller.',
      ],
    };
  },
});
