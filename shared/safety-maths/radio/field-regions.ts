import { calculation } from '../calculation.js';
import { optional, quantity } from '../inputs.js';
import { out, put } from '../working.js';
import { speedOfLight } from './wavelength.js';

/**
 * Where the near field of an antenna ends: λ / 2π for a small antenna, 0.62 × √(D³ / λ) for a large one, and the far field from 2 × D² / λ.
 * Frequency in MHz, greatest size D in m (the last two are null without it); distances in m. Source: antenna texts; Federal Standard 1037C.
 */
export const fieldRegions = calculation({
  id: 'field-regions',
  title: 'Near field and far field of an antenna',
  topic: 'radio',
  formula: 'd = 2 × D² / λ',
  inputs: {
    frequency: quantity('frequency', 'MHz', { min: 0.1, max: 300_000 }),
    largest_dimension: optional(quantity('greatest size of the antenna', 'm', { min: 0.001, max: 1000 })),
  },
  outputs: { wavelength: 'm', small_near_field: 'm', large_near_field: 'm', far_field: 'm' },
  sources: ['light', 'nearField', 'farField'],
  validity: 'Rules of thumb: λ/2π for antennas much smaller than a wavelength, the other two for those of a wavelength or more.',
  rule: 'Far field from 2 D² / λ (Federal Standard 1037C)',
  foundBy: ['near field', 'far field', 'reactive near field', 'fresnel', 'fraunhofer', 'lambda over two pi'],
  caution: 'rf',
  checks: [
    { name: 'reactive near field of a small aerial, lambda/2pi', keys: { distance_m: 'small_near_field' } },
    { name: 'far-field distance 2 D^2 / lambda', keys: { distance_m: 'far_field' } },
    { name: 'reactive near field of a large aerial, 0.62 sqrt(D^3/lambda)', keys: { distance_m: 'large_near_field' } },
  ],
  work({ frequency, largest_dimension: size }) {
    const wavelength = speedOfLight / (frequency * 1e6);
    const small = wavelength / (2 * Math.PI);
    const { near, far, steps } = size === undefined ? noSize : bySize(size, wavelength);
    return {
      result: { wavelength, small_near_field: small, large_near_field: near, far_field: far },
      steps: [
        `Wavelength: λ = c / f = 299.8 / ${put(frequency, '')} = ${out(wavelength, 'm')}`,
        `Near field of a small antenna: d₁ = λ / (2 × π) = ${out(wavelength, 'm')} / 6.283 = ${out(small, 'm')}`,
        ...steps,
        'Free-space sums fail in the near field: never use them there to show that a place is safe.',
      ],
    };
  },
});

const noSize = { near: null, far: null, steps: [] };

function bySize(size: number, wavelength: number): { near: number; far: number; steps: string[] } {
  const near = 0.62 * Math.sqrt(size ** 3 / wavelength);
  const far = (2 * size * size) / wavelength;
  const waves = out(wavelength, 'm');
  return {
    near,
    far,
    steps: [
      `Near field of a large antenna: d₂ = 0.62 × √(D³ / λ) = 0.62 × √((${put(size, 'm')})³ / ${waves}) = ${out(near, 'm')}`,
      `Far field from: d₃ = 2 × D² / λ = 2 × (${put(size, 'm')})² / ${waves} = ${out(far, 'm')}`,
      size < wavelength
        ? 'Smaller than a wavelength, so the last two come out too short: count the near field to well beyond the greatest of the three.'
        : 'The antenna is a wavelength or more in size: the last two fit it.',
    ],
  };
}
